"""A forecast in words for a teacher: short sections of lines, each line under 80 letters."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from compose.forecast.answers import Answers
from compose.forecast.chances.duties import duties_told
from compose.forecast.forecast import Forecast
from compose.forecast.sensitivity import Swing
from compose.forecast.standings import PLAYING
from compose.forecast.telling.results import NAMES, results, row, winners
from compose.forecast.telling.wording import for_what, minutes_with_margin, parts, share_with_margin
from compose.staging.minutes import Lesson
from compose.telling.sides import subject, wins
from grammar.amounts import SELDOM, minutes, percent
from grammar.frozen import frozen
from grammar.words import count, listing

SHOWN = 3  # swings told
STANDING_VERBS = {
    "playing": "plays",
    "waiting": "waits",
    "on a bench": "sits on a bench",
    "out for the round": "is out for the round",
    "resting": "rests while others play",
}


@frozen
class Section:
    """A heading with its lines."""

    title: str
    lines: tuple[str, ...]


def told(forecast: Forecast) -> tuple[Section, ...]:
    """The whole forecast; sections without lines are left out."""
    return (*told_first(forecast), *told_then(forecast), *told_in_detail(forecast))


def told_first(forecast: Forecast) -> tuple[Section, ...]:
    """What is known before band and swings are."""
    return _sections(
        forecast,
        ("How long a round lasts", _length),
        ("Who wins", winners),
        ("What a pupil does in a round", _pupil),
        (_of_lesson(forecast.lesson), _lesson),
    )


def _of_lesson(lesson: Lesson) -> str:
    """The heading: a length that nobody said is told as such."""
    usual = ", which is usual (a class says its own)" if lesson.usual else ""
    return f"In a lesson of {minutes(lesson.minutes)}{usual}"


def told_then(forecast: Forecast) -> tuple[Section, ...]:
    """What it is for a class of another ability, and the seed of all that was played at random."""
    return _sections(
        forecast,
        ("With a class of low, usual and high ability", _band),
        ("Found by playing at random", _played),
    )


def told_in_detail(forecast: Forecast) -> tuple[Section, ...]:
    """What the numbers hang on, for those who want to know."""
    return _sections(
        forecast,
        ("What moves this most, if it is otherwise than assumed", _swings),
        ("What it rests on", _assumptions),
        ("How it was found", _method),
    )


def _sections(forecast: Forecast, *parts: tuple[str, Callable[[Forecast], Iterator[str]]]) -> tuple[Section, ...]:
    sections = (Section(title, tuple(lines(forecast))) for title, lines in parts)
    return tuple(section for section in sections if section.lines)


def summary(forecast: Forecast) -> tuple[str, ...]:
    """The forecast in a few sentences, for a card or below a check: length, odds, turns, waiting."""
    course = forecast.course
    length = f"A round lasts {minutes_with_margin(course.length.mean)} on average"
    band = forecast.band
    if band.low is not None and band.high is not None:
        ends = (minutes(band.low.minutes.value), minutes(band.high.minutes.value))
        length += f" ({ends[0]} with a less able class, {ends[1]} with an abler one)"
    shares = parts([figure.value for _, figure in results(forecast)])
    won = listing(
        f"{wins(side, forecast.net.solo)} {share}" for (side, _), share in zip(forecast.odds.wins, shares, strict=False)
    )
    who = f"Of all rounds {won}" if forecast.odds.nobody.value < 0.9995 else "Nobody wins a round"
    turns = f"A pupil gets {forecast.turns.each.value:.1f} turns a minute"
    idle = band.usual.idle.value
    if idle > SELDOM:
        turns += f" and spends {percent(idle)} of the round not playing"
    return tuple(f"{line}." for line in (length, who, turns))


def _length(forecast: Forecast) -> Iterator[str]:
    length, course = forecast.course.length, forecast.course
    yield row("on average", minutes_with_margin(length.mean))
    yield row("half of the rounds, at most", minutes_with_margin(length.median))
    yield row("nine in ten rounds, at most", minutes_with_margin(length.ninety))
    stop = "stopped by the clock" if course.clock_rings else "still going"
    if math.isfinite(course.clock_minutes):
        yield row(f"{stop}, after {minutes(course.clock_minutes)}", share_with_margin(forecast.odds.running))
    elif length.over_by:
        lesson_end, over = length.over_by[-1]
        yield row(f"over before {minutes(lesson_end)} of play", share_with_margin(over))
    if forecast.odds.never.value > SELDOM:
        yield row("never over by itself", share_with_margin(forecast.odds.never))
    if not length.settled:
        yield "Rounds may go on for very long; the longest are estimated."


def _pupil(forecast: Forecast) -> Iterator[str]:
    shares = parts([each.share.value for each in forecast.standings])
    for each, said in zip(forecast.standings, shares, strict=True):
        yield row(STANDING_VERBS[each.name], share_with_margin(each.share, said))
    yield from (row(*each) for each in duties_told(forecast.net))
    wait = forecast.longest_wait
    if wait is not None:
        place = forecast.net.places[wait.place]
        of_side = f" of {subject(place.side)}" if place.side and len(forecast.net.sides) > 1 else ""
        yield f"the longest waits are {for_what(place)}{of_side}:"
        yield row("on average", minutes_with_margin(wait.mean), 4)
        yield row("nine in ten, at most", minutes_with_margin(wait.ninety), 4)
    turns = forecast.turns
    yield row("turns a minute", f"{turns.each.value:.1f}")
    if len({round(figure.value, 1) for _, figure in turns.by_side}) > 1:
        for side, figure in turns.by_side:
            yield row(f"for {subject(side)}", f"{figure.value:.1f}", 4)
    if len(turns.by_skill) > 1:
        for skill, figure in turns.by_skill:
            yield row(skill, f"{figure.value:.1f}", 4)


def _lesson(forecast: Forecast) -> Iterator[str]:
    lesson, active = forecast.lesson, forecast.active
    mean = forecast.course.length.mean.value
    yield row("left for play", minutes(lesson.play))
    if math.isfinite(mean):
        yield row("rounds there is time for", f"{lesson.rounds(mean):.1f}")
    band = f"{percent(active.usual)} ({percent(active.low)} to {percent(active.high)})"
    yield row("class time in which a pupil is active", band)
    yield f"    {active.counted}"


def _band(forecast: Forecast) -> Iterator[str]:
    band = forecast.band
    if band.low is None or band.high is None:
        return
    ends = (band.low, band.usual, band.high)

    def ends_of(name: str, tell: Callable[[Answers], str]) -> str:
        return f"{name:<{NAMES - 12}}" + "".join(f"{tell(end):>12}" for end in ends)

    won = {id(end): parts([chance.value for _, chance in end.wins] + [_not_won(end)]) for end in ends}
    yield ends_of("a round lasts", lambda a: minutes(a.minutes.value))
    for number, (side, _) in enumerate(band.usual.wins):
        if any(end.wins[number][1].value > 0 for end in ends):
            yield ends_of(wins(side, forecast.net.solo), lambda a, n=number: won[id(a)][n])  # type: ignore[misc]
    if any(end.stopped.value > SELDOM for end in ends):
        stop = "stopped by the clock" if forecast.course.clock_rings else "still going at the end"
        yield ends_of(stop, lambda a: percent(a.stopped.value))
    yield ends_of("turns a minute", lambda a: f"{a.turns.value:.1f}")
    if any(end.idle.value > SELDOM for end in ends):
        yield ends_of("not playing", lambda a: percent(a.idle.value))


def _not_won(end: Answers) -> float:
    return max(0.0, 1.0 - sum(chance.value for _, chance in end.wins))


def _swings(forecast: Forecast) -> Iterator[str]:
    for swing in [each for each in forecast.swings if each.by > 0 and each.beyond_chance][:SHOWN]:
        yield f"{swing.about}:"
        for each in swing.assumptions:
            yield f"    {each.name}: {each.low:.3g} to {each.high:.3g} {each.unit}, taken as {each.usual:.3g}"
        yield f"    → {swing.most}: {_told(swing, 0)} to {_told(swing, 1)}"


def _told(swing: Swing, end: int) -> str:
    figure, share = (swing.low, swing.high)[end].named()[swing.most]
    if share:
        return percent(figure.value)
    return minutes(figure.value) if swing.most == "mean length" else f"{figure.value:.1f}"


def _assumptions(forecast: Forecast) -> Iterator[str]:
    if not forecast.assumptions:
        return
    yield f"{'':<{NAMES - 4}}{'low':>7}{'usual':>8}{'high':>8}"
    for each in forecast.assumptions:
        name = f"{each.table.partition(' ')[2]}: {each.name}"[: NAMES - 6]
        mark = "" if each.assumed else "  *"
        yield f"{name:<{NAMES - 4}}{each.low:>7.3g}{each.usual:>8.3g}{each.high:>8.3g} {each.unit}{mark}"
    yield "Rows marked * have a published source; the others are assumptions."


def _played(forecast: Forecast) -> Iterator[str]:
    course = forecast.course
    if course.rounds is not None:
        yield f"Played {count(course.rounds, 'round')} at random (seed {course.seed}); ± holds in 95 of 100 cases."
    played = next((wait for wait in forecast.waits if wait.in_a_round > 0 and wait.seed is not None), None)
    if played is not None:
        yield f"The waits of nine in ten: {count(played.rounds, 'round')} played at random (seed {played.seed}),"
        yield "each in the order in which the rules let them go."


def _method(forecast: Forecast) -> Iterator[str]:
    course = forecast.course
    if course.rounds is None:
        yield f"Worked out exactly; chances are right to {max(course.chance_error, 1e-12):.0e}."
    if forecast.passed_bound:
        yield "Points past the bound of the check were counted by playing rounds at random."
    idle = [each.name for each in forecast.standings if each.name != PLAYING]
    if idle:
        yield "A wait that the end of the round cuts off counts as ended there."
