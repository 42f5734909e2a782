"""How often a pupil gets a turn: attempts per pupil and minute of the round, the waiting and the out taken in."""

from __future__ import annotations

import math
from collections.abc import Callable

from compose.forecast.course import SURE, Course, Figure
from compose.forecast.standings import pupils_of
from compose.net.net import Net, Transition
from grammar.frozen import frozen

NO_TURN = ("fetch", "free", "hold", "foul")  # clockwork around the game, not what pupils come for


@frozen
class Turns:
    """Attempts per pupil and minute: of all pupils, of each side's, and by skill over all pupils.

    Fetching balls and freeing others are told by skill but are no turns. Pupils count on the side on which
    they start.
    """

    each: Figure
    by_side: tuple[tuple[str, Figure], ...]
    by_skill: tuple[tuple[str, Figure], ...]


def turns(net: Net, course: Course) -> Turns:
    """The turns of a round; none at all where it has no time or nobody plays."""
    skills = dict.fromkeys(move.attempt.skill for move in net.transitions if move.side is not None)
    return Turns(
        each=_rate(net, course, None, _is_turn),
        by_side=tuple((side, _rate(net, course, side, _is_turn)) for side in net.sides),
        by_skill=tuple((skill, _rate(net, course, None, _with(skill))) for skill in skills),
    )


def _is_turn(move: Transition) -> bool:
    return move.side is not None and move.attempt.skill not in NO_TURN


def _with(skill: str) -> Callable[[Transition], bool]:
    return lambda move: move.side is not None and move.attempt.skill == skill


def _rate(net: Net, course: Course, side: str | None, counts: Callable[[Transition], bool]) -> Figure:
    minutes, pupils = course.length.mean.value, pupils_of(net, side)
    if minutes <= 0 or math.isinf(minutes) or not pupils:
        return Figure(0.0)
    moves = [n for n, move in enumerate(net.transitions) if counts(move) and side in (None, move.side)]
    made = sum(float(course.firings[move]) for move in moves)
    # Outcomes of one attempt rise and fall together, so their spreads add up; at worst the length's comes on top.
    spread = sum(float(course.spread_firings[move]) for move in moves) / made if made else 0.0
    share = SURE * spread + course.length.mean.margin / minutes
    return Figure(made / minutes / pupils, made / minutes / pupils * share)
