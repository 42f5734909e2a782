"""The clock as the second reader has it: of which moments a sheet speaks, and which part of the round it is."""

from __future__ import annotations

from grammar.sentences import attempting, claims, finish, play, then, time, when
from tests.interpreter.board import Board, Spot
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet

DECIDING = (finish.NextPointWins, finish.NextKnockedWins)
WITH_THE_TEACHER = Spot("with the teacher", "at", None)


@remembered
def clock(sheet: Sheet) -> finish.After | None:
    """What the sheet says of the clock; halves that say their length alone go to whoever has more points, if any."""
    parts = [each for each in (*sheet.said(finish.Halves), *sheet.said(finish.Innings)) if each.length is not None]
    for length in (each.length for each in parts if each.length is not None and not sheet.said(finish.After)):
        scored = any(isinstance(each, then.Scores) for rule in sheet.said(when.When) for each in rule.consequences)
        ahead = (finish.MoreWins("more", claims.CountedPoints()),) if scored else ()
        return finish.After(length, (*ahead, finish.Draw()))
    return next(iter(sheet.said(finish.After)), None)


@remembered
def bell_s(sheet: Sheet) -> float | None:
    """When the clock ends the round."""
    after = clock(sheet)
    return after.time.seconds if after is not None else None


def at_s(sheet: Sheet, said: time.OfClock | time.TimeSpan) -> float:
    """The moment of which words speak: for what comes again, the first."""
    bell = bell_s(sheet)
    if isinstance(said, time.HalfTime):
        assert bell is not None
        return bell / 2
    if isinstance(said, time.SpanLast):
        assert bell is not None
        return bell - said.time.seconds
    return said.time.seconds


@remembered
def moments(sheet: Sheet) -> list[float]:
    """Every moment at which something happens or begins, up to the bell; without one, up to the last of these."""
    once: set[float] = set()
    again: set[float] = set()
    for rule in sheet.said(when.When):
        if isinstance(rule.event, time.OfClock):
            (again if isinstance(rule.event, time.EveryTime) else once).add(at_s(sheet, rule.event))
        if rule.span_of_time is not None and not isinstance(rule.span_of_time, time.TheFirstTime):
            once.add(at_s(sheet, rule.span_of_time))
    for attempt in (*sheet.said(attempting.Attempt), *sheet.said(play.Touch), *sheet.said(play.Take)):
        once |= {at_s(sheet, each.span_of_time) for each in attempt.details if isinstance(each, attempting.OnlyIn)}
    for more in sheet.said(play.PointsCount):
        once |= {at_s(sheet, more.span_of_time)} if more.span_of_time is not None else set()
    bell = bell_s(sheet)
    last = bell if bell is not None else max(once, default=0.0)
    for each in again:
        number = 1
        while each * number < last or (bell is None and each * number == last):
            once.add(each * number)
            number += 1
    if next_point(sheet):
        once.discard(bell or 0.0)
    return [*sorted(once), *([bell] if bell is not None and next_point(sheet) else [])]


@remembered
def next_point(sheet: Sheet) -> bool:
    """Whether play goes on from a level score when the clock is over."""
    after = clock(sheet)
    return after is not None and isinstance(after.results[-1], DECIDING)


def points_are_over(sheet: Sheet, board: Board) -> bool:
    """Whether the clock is over, and the next of something decides instead of points."""
    after = clock(sheet)
    by_things = after is not None and isinstance(after.results[-1], finish.NextKnockedWins)
    return by_things and board.clock == len(moments(sheet))


def goes_on(sheet: Sheet) -> bool:
    """Whether something comes over and over again after the last of the moments."""
    events = [rule.event for rule in sheet.said(when.When)]
    return bell_s(sheet) is None and any(isinstance(event, time.EveryTime) for event in events)


def is_now(sheet: Sheet, span: time.TimeSpan | None, board: Board) -> bool:
    """Whether a part of the round lasts."""
    if span is None:
        return True
    passed = board.clock > moments(sheet).index(at_s(sheet, span))
    return not passed if isinstance(span, time.SpanFirst) else passed


def first_time(sheet: Sheet, rule: when.When) -> str:
    """Which of the lines that hold only the first time a rule is."""
    lines = [each for each in sheet.said(when.When) if isinstance(each.span_of_time, time.TheFirstTime)]
    return str(lines.index(rule) + 1)


def holds_now(sheet: Sheet, rule: when.When, board: Board) -> bool:
    """Whether a line may hold now: the part of the round lasts, or it has not taken effect yet."""
    if isinstance(rule.span_of_time, time.TheFirstTime):
        return first_time(sheet, rule) not in board.taken
    return is_now(sheet, rule.span_of_time, board)


def times_more(sheet: Sheet, board: Board) -> int:
    """How many times points count."""
    times = 1
    for line in sheet.said(play.PointsCount):
        if is_now(sheet, line.span_of_time, board):
            times *= {"count double": 2, "count three times": 3}[line.times]
    return times
