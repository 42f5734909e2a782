"""The floor that players may use where some of the court is not for them: a zone they stay in, a strip kept free."""

from __future__ import annotations

from compose.staging.floor.covered import covered_m2, left_free_m2
from compose.staging.floor.ground import Ground, ground_under
from compose.staging.floor.homes import floors_of
from compose.staging.floor.values import Rectangle
from compose.staging.places import Acting, Court
from grammar.core.game import Play

FLOOR_TO_USE = "floor that a side may use for each player"


def floor_to_use_m2(play: Play, court: Court) -> float | None:
    """The least floor for each of those on the court at the start, of players for whom some of the court, or of their
    half, is none; None where there are none. Others who may use no more than the same floor have a share of it. What
    stands fixed in it is nobody's floor."""
    found = [_for_each(each, court) for each in court.acting if _kept_from_some(play, court, each)]
    return min((each for each in found if each is not None), default=None)


def _kept_from_some(play: Play, court: Court, who: Acting) -> bool:
    ground = ground_under(court.floor, play)
    whole = _whole(play, ground, who)
    return covered_m2(_on(court, who)) < covered_m2(whole) - 1e-6


def _whole(play: Play, ground: Ground, who: Acting) -> list[Rectangle]:
    """The half, where they stay in a half, else the court."""
    staying = floors_of(play, ground, who.population)
    halves = [ground.slice_of(each) for each in ground.sides] if ground.halved else []
    mine = [half for half in halves if all(half.joined(floor) == half for floor in staying)]
    return mine or [ground.court]


def _for_each(who: Acting, court: Court) -> float | None:
    floors = _on(court, who)
    there = sum(_on_court(each, court) for each in court.acting if _within(_on(court, each), floors))
    return left_free_m2(floors, court.fixed) / there if floors and there and _on_court(who, court) else None


def _on(court: Court, who: Acting) -> list[Rectangle]:
    """The floors of some players as far as they lie on the court: beside it they wait."""
    return [floor for floor in who.floors if floor.common_m2(court.floor.court) > 0]


def _on_court(who: Acting, court: Court) -> int:
    players = [each for each in court.floor.players_of(who.side) if (each.role or "") == who.role]
    return sum(court.floor.court.holds(each.x, each.y) for each in players)


def _within(floors: list[Rectangle], others: list[Rectangle]) -> bool:
    """Whether all of some floors lies within others."""
    return bool(floors) and covered_m2([*floors, *others]) <= covered_m2(others) + 1e-6
