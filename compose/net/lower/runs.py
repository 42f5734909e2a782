"""Successes in a row: a count of each side, which a failure puts back to nothing."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from compose.net.lower.builder import Builder, by_itself
from compose.net.lower.dispatch import Case
from compose.net.net import Assign, Effect, Place, Shift
from compose.net.outcome import Moment
from grammar.core.guards import Row, counts_in
from grammar.core.play import Offer
from grammar.core.rules import Result, SendBall, SendBalls
from grammar.core.runs import InARow
from grammar.core.schedule import guards_of
from grammar.core.skills import WITH_A_BALL
from grammar.core.values import SideId

FAILED = frozenset({Result.MISSED, Result.CAUGHT, Result.LEFT, Result.BLOCKED, Result.HIGH})


def row_place(builder: Builder, run: InARow | Row) -> int:
    """The count of a side's successes in a row; one that is asked for stays full till somebody makes use of it."""
    row = run.run if isinstance(run, Row) else run
    skills = "+".join(sorted(skill.value for skill in row.skills))
    name = f"row/{row.side.key}/{row.number}/{skills}"
    if isinstance(run, Row):
        name += "/asked"
    place = Place(name, "row", row.number, 0, row.side.key, skills=row.skills)
    return builder.add_place(("row", run), place)


def rows_begun_anew(builder: Builder, side: SideId, case: Case) -> Iterator[Effect]:
    """A side that has to give a ball away counts anew what is asked of it."""
    sending = (rule.lines for effect, rule in case.effects if isinstance(effect, SendBall | SendBalls))
    for lines in islice(sending, 1):
        rule = by_itself(builder.core.lines[lines[0]].span)
        yield from (Assign(row_place(builder, row), 0, rule) for row in _asked_of(builder, side))


def row_effects(builder: Builder, moment: Moment, offer: Offer) -> Iterator[Effect]:
    """What an attempt does to the counts: one more success, or none any more; whoever tries what asks for a row, or
    gives the ball away by any other attempt, begins it anew."""
    yield from _of_rules(builder, moment)
    own = set(counts_in(offer.only))
    for row in _asked_of(builder, moment.by.side):
        if moment.skill in row.run.skills or moment.skill in WITH_A_BALL:
            more = moment.skill in row.run.skills and moment.result not in FAILED and row not in own
            place, rule = row_place(builder, row), by_itself(builder.core.lines[offer.lines[0]].span)
            yield Shift(place, 1, rule) if more else Assign(place, 0, rule)


def _asked_of(builder: Builder, side: SideId) -> Iterator[Row]:
    """The successes in a row of a side on which something hangs, each once."""
    counts = dict.fromkeys(count for guard, _ in guards_of(builder.play) for count in counts_in(guard))
    return (count for count in counts if isinstance(count, Row) and count.run.side == side)


def _of_rules(builder: Builder, moment: Moment) -> Iterator[Effect]:
    failed, counted = moment.result in FAILED, set[InARow]()
    for rule in builder.play.rules:
        run = rule.trigger
        if isinstance(run, InARow) and run.side == moment.by.side and moment.skill in run.skills and run not in counted:
            counted.add(run)  # several lines of one row count it once
            place = row_place(builder, run)
            yield Assign(place, 0, builder.rule(rule.lines)) if failed else Shift(place, 1, builder.rule(rule.lines))
