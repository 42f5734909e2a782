"""The numbers of a whole class out of those of its courts: loaded only where something was forecast."""

from __future__ import annotations

from collections.abc import Sequence

from attrs import evolve

from compose.answer.staged import Staged
from compose.forecast.answers import Answers
from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast


def whole_class(games: Sequence[tuple[Staged, Answers]]) -> Answers:
    """The length is the mean over all courts; turns and time not playing are those of all pupils, with whoever plays
    in none of the games. The odds are those of the first kind of court."""
    playing = [(game.pupils, each) for game, each in games]
    over = games[0][0].staging.teams.over
    return evolve(
        games[0][1],
        minutes=_mean([(game.courts, each.minutes) for game, each in games]),
        turns=_mean([*((pupils, each.turns) for pupils, each in playing), (over, Figure(0.0))]),
        idle=_mean([*((pupils, each.idle) for pupils, each in playing), (over, Figure(1.0))]),
    )


def active_in_round(games: Sequence[tuple[Staged, Forecast]]) -> float:
    """The share of a round in which a pupil of the class is active; whoever plays in no game is not."""
    active = sum(game.pupils * told.active.in_round for game, told in games)
    return active / (sum(game.pupils for game, _ in games) + games[0][0].staging.teams.over)


def _mean(weighed: Sequence[tuple[int, Figure]]) -> Figure:
    """The mean of some numbers, each with its weight; margins add up at worst."""
    counted = [(weight, each) for weight, each in weighed if weight]
    whole = sum(weight for weight, _ in counted)
    value = sum(weight * each.value for weight, each in counted) / whole
    return Figure(value, sum(weight * each.margin for weight, each in counted) / whole)
