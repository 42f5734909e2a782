"""What a forecast finds wanting in the length of a round, and in what a round of that length can come to."""

from __future__ import annotations

from attrs import evolve

from compose.check.ends import played_on
from compose.check.match import decides
from compose.forecast.findings.held import Held
from compose.forecast.findings.levers import one_of, to_make_longer, to_make_shorter, to_reach
from compose.forecast.findings.spans import span_of_stop
from grammar.finding import Finding, Severity
from grammar.said import Percent, Time, Written, said

OUT_OF_REACH = "F-out-of-reach"
MOST_GOING = 0.5  # of the rounds may be cut off by the lesson's end, however short the lesson (assumption)
HARDLY_ENDED = "hardly a round gets as far as `{line}`: the clock ends nearly every one after {time}."
HARDLY_WON = "hardly a round gets as far as `{line}`: the clock ends nearly every one after {time}, without a winner."
SELDOM_STILL_LEVEL = 0.01  # of the rounds: fewer outlast a lesson hardly ever (assumption)
SELDOM_REACHED = 0.01  # of the rounds: what ends fewer of them by play is out of reach (assumption)


def long_round(held: Held) -> list[Finding]:
    """A round so long that a lesson has room for hardly two."""
    mean = held.told.course.length.mean
    margin = held.margin("lesson round", "length")
    going = 0.0 if held.told.course.clock_rings else held.told.odds.running.value
    if mean.value - mean.margin <= margin.high and going <= MOST_GOING:
        return _level_for_long(held)
    title = said("a round lasts {time} on average, longer than {most}.", time=Time(mean.value), most=Time(margin.high))
    numbers = {"mean minutes": mean.value}
    if going > 0:
        after = Time(held.told.course.clock_minutes)
        title = said("{share} of the rounds are still going after {time}.", share=Percent(going), time=after)
        numbers["still going"] = going
    hint = one_of(tuple(to_make_shorter(held.told.net)))
    return held.found("F-long-round", Severity.WARNING, title, hint, span_of_stop(held.told), numbers)


def _level_for_long(held: Held) -> list[Finding]:
    """Some rounds outlast the lesson, since a level score is played on and nothing ends it before somebody leads."""
    course, net = held.told.course, held.told.net
    after, over = course.length.over_by[-1] if course.length.over_by else (course.clock_minutes, None)
    going = held.told.odds.running.value if over is None else 1.0 - over.value
    if not played_on(net) or going < SELDOM_STILL_LEVEL:
        return []
    title = said(
        "{share} of the rounds are still going after {time}: no clock ends a level score.",
        share=Percent(going),
        time=Time(after),
    )
    hint = one_of(tuple(to_make_shorter(net)))
    return held.found("F-long-round", Severity.NOTE, title, hint, span_of_stop(held.told), {"still going": going})


def short_round(held: Held) -> list[Finding]:
    """A round that is over before it is worth setting up."""
    mean, again = held.told.course.length.mean, held.told.lesson.again
    margin = held.margin("lesson round", "length")
    if mean.value + mean.margin >= margin.low:
        return []
    title = said(
        "a round lasts only {time} on average; setting it up again takes {again}.",
        time=Time(mean.value),
        again=Time(again),
    )
    hint = one_of(tuple(to_make_longer(held.told.net, held.told.course.stopped > MOST_GOING)))
    numbers = {"mean minutes": mean.value}
    return held.found("F-short-round", Severity.WARNING, title, hint, span_of_stop(held.told), numbers)


def out_of_reach(held: Held) -> list[Finding]:
    """Ways to end a round that no class will see: the clock is always there first.

    A round whose clock says who wins is played all the same; where it leaves no winner, hardly a round has one.
    """
    told, net = held.told, held.told.net
    reached = told.course.chance(float(told.course.by_end.sum()))
    if net.bell is None or not net.ends or reached.value + reached.margin >= SELDOM_REACHED:
        return []
    ways = tuple(dict.fromkeys(end.rule for end in net.ends))
    won = sum(chance.value for _, chance in told.odds.wins)
    severity = Severity.NOTE if won >= SELDOM_REACHED or not decides(net) else Severity.WARNING
    title = said(
        HARDLY_ENDED if severity is Severity.NOTE else HARDLY_WON,
        line=Written(ways[0].text),
        time=Time(net.bell.after_s / 60),
    )
    hint = one_of((*to_reach(net), "give the clock more time"))
    numbers = {"ended by play": reached.value, "won": won}
    found = held.found(OUT_OF_REACH, severity, title, hint, ways[0].span, numbers)
    return [evolve(each, others=tuple(way.span for way in ways[1:])) for each in found]
