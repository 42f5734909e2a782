"""What the clock says while play goes on: moments of the round, and parts of it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.clock import AtTime, ComeIn, TakeAway
from grammar.core.guards import ALWAYS, Clock, Compare, Guard, Relation, Taken, every
from grammar.core.play import PointsCount
from grammar.core.reading.sheet.reader import Reader, seconds
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Effect, Trigger
from grammar.core.values import KindId, Sort
from grammar.said import quoting, write
from grammar.sentences import play, then, time, when
from grammar.sentences.base import Node, Np, Quantity
from grammar.sentences.determiners import ALL, EACH

TIMES = {"count double": 2, "count three times": 3}


def read_moment(reader: Reader, event: time.OfClock) -> AtTime:
    """When a rule of the clock holds. Raises Senseless."""
    match event:
        case time.AfterTime():
            return AtTime(_within(reader, event.time, event))
        case time.EveryTime():
            if event.determiner not in EACH:
                raise Senseless(event, "`{said}` is no moment of play.", write(f"every {event.time.words()}"))
            return AtTime(_within(reader, event.time, event), again=True)
        case time.HalfTime():
            if event.moment != "at half-time":
                raise Senseless(event, "After a round nothing of it is left to change.", write("at half-time"))
            return AtTime(_ends_s(reader, event) / 2)


def _within(reader: Reader, after: Quantity, node: Node) -> Fraction:
    """A time at which the round has begun and is not over yet."""
    if seconds(after) <= 0:
        raise Senseless(node, "The round has not begun then.", "Write a time after its beginning.")
    return read_wait(reader, after, node)


def read_wait(reader: Reader, lasts: Quantity, node: Node) -> Fraction:
    """How long it is until something that happens before the clock ends the round. Raises Senseless."""
    if reader.bell_s is not None and seconds(lasts) >= reader.bell_s:
        title = "The clock has ended the round by then."
        raise Senseless(node, title, quoting("Write less than {told}.", told=_told(reader.bell_s)))
    return seconds(lasts)


def _told(time_s: Fraction) -> str:
    return f"{float(time_s / 60):g} min" if time_s >= 60 else f"{float(time_s):g} s"


def _ends_s(reader: Reader, node: Node) -> Fraction:
    """When the clock ends the round."""
    if reader.bell_s is None:
        hint = 'Add to finish, such as "after 6 min: more points wins, else a draw".'
        raise Senseless(node, "No clock ends this round, so that nobody knows when that is.", hint)
    return reader.bell_s


def read_span(reader: Reader, span: time.TimeSpan | None) -> Guard:
    """While a part of the round lasts. Raises Senseless."""
    if span is None:
        return ALWAYS
    if isinstance(span, time.SpanFirst):
        return Compare(Clock(_within(reader, span.time, span)), Relation.AT_MOST, 0)
    if isinstance(span, time.SpanLast):
        at_s = _ends_s(reader, span) - seconds(span.time)
        if not 0 < at_s < _ends_s(reader, span):
            ends = _told(_ends_s(reader, span))
            raise Senseless(
                span, "The round has not begun then, or is over.", quoting("Write less than {ends}.", ends=ends)
            )
        return Compare(Clock(at_s), Relation.AT_LEAST, 1)
    return Compare(Clock(_within(reader, span.time, span)), Relation.AT_LEAST, 1)


def within_span(reader: Reader, span: time.TimeSpan | None, guard: Guard) -> Guard:
    """A guard that holds in a part of the round only."""
    return guard if span is None else every([read_span(reader, span), guard])


def first_time(reader: Reader, line: int) -> int:
    """The number of a line among those that hold only the first time."""
    if line not in reader.first_times:
        reader.first_times.append(line)
    return reader.first_times.index(line) + 1


def in_rule(reader: Reader, rule: when.When, guard: Guard, line: int) -> Guard:
    """When a rule holds: in a part of the round only, or the first time only."""
    if isinstance(rule.span_of_time, time.TheFirstTime):
        return every([Compare(Taken(first_time(reader, line)), Relation.AT_MOST, 0), guard])
    return within_span(reader, rule.span_of_time, guard)


def read_points_count(reader: Reader, sentence: play.PointsCount, line: int) -> Iterator[PointsCount]:
    """Points that count more."""
    yield PointsCount(TIMES[sentence.times], read_span(reader, sentence.span_of_time), (line,))


def come_or_go(reader: Reader, consequence: then.ComesIn | then.TakenAway, trigger: Trigger) -> Effect:
    """Balls that come into play or leave it, by the clock."""
    if not isinstance(trigger, AtTime):
        raise _only_by_the_clock(consequence)
    if isinstance(consequence, then.TakenAway):
        return TakeAway(_taken(reader, consequence))
    balls = reader.balls(consequence.name)
    every_ball = consequence.number is None and consequence.determiner in ALL
    if consequence.number is not None and consequence.determiner not in (None, "the"):
        raise Senseless(consequence, "This says twice how many.", write(f"{consequence.number.words()} balls come in"))
    if len(balls) > 1 and not every_ball:
        raise Senseless(consequence.name, "There are several kinds of balls.", "Name the one that comes in.")
    if every_ball:
        return ComeIn(frozenset(balls), None)
    count = 1 if consequence.number is None else consequence.number.whole
    if count < 1 or (consequence.number is not None and consequence.number.value != count):
        raise Senseless(consequence, "So many balls cannot come in.", "Write a whole number from 1.")
    if trigger.again and reader.bell_s is None:
        raise Senseless(
            consequence,
            "No clock ends this round, so that balls would come in for ever.",
            'Say when: "after 2 min: ...".',
        )
    return ComeIn(frozenset(balls), count)


def _only_by_the_clock(consequence: then.ComesIn | then.TakenAway) -> Senseless:
    goes, comes = "the ball goes to the other side", "after 2 min: another ball comes in"
    if isinstance(consequence, then.TakenAway):
        title = "Balls are taken away by the clock only, not for what somebody does."
        return Senseless(
            consequence, title, quoting("Say where the ball goes then, or what it costs, such as: {goes}", goes=goes)
        )
    title = "Balls come in by the clock only, not for what somebody does."
    return Senseless(consequence, title, quoting("Give it a time of its own, such as: {comes}", comes=comes))


def _taken(reader: Reader, consequence: then.TakenAway) -> frozenset[KindId]:
    who = consequence.who
    if not isinstance(who, Np) or not reader.kinds_meant(who, Sort.BALL):
        raise Senseless(consequence, "Only balls are taken away.", write("all balls are taken away"))
    if who.determiner not in ALL:
        raise Senseless(who, "`{said}`: which of them?", write(f"all {who.name.text}"))
    return frozenset(reader.balls(who))
