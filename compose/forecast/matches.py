"""From the round to what the sheet calls a game: best of n rounds, two halves in which the sides change tasks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from compose.check.taken_along import is_added
from compose.forecast.added_up import over_all_rounds
from compose.forecast.chain.chain import Floats
from compose.forecast.course import Course, Figure
from compose.forecast.odds import odds
from compose.forecast.resting import of_groups
from compose.net.match import Match
from compose.net.net import Net
from grammar.frozen import frozen


@frozen
class GameOdds:
    """Who wins the whole game how often; `drawn` is the chance that nobody does.

    Where sides rest, `plays` is the share of the rounds that each plays. Groups go by the side that they begin as.
    `rounds` is how many rounds (or halves) are played in the mean, `minutes` how long that takes, play alone: at least,
    on several courts, where each round waits for the longest.
    """

    match: Match
    wins: tuple[tuple[str, Figure], ...]
    drawn: Figure
    rounds: float
    minutes: float
    plays: tuple[tuple[str, float], ...] = ()


def game_odds(net: Net, first: Course, second: Course | None = None) -> GameOdds:
    """The odds of the game; `second` is the course of the half with the groups changed over, where they are not
    equally large (without it both halves are alike)."""
    match, other = net.match, second if second is not None else first
    minutes = first.length.mean.value
    of_one = [chance.value for _, chance in odds(net, first).wins]
    if match.meeting is not None:
        return _with_rest(match, first, of_one)
    if is_added(net):
        return _added(net, first)
    if match.halves:
        of_one = list(_over_halves(match, _leads(net, first), _leads(net, other)))
        minutes = (minutes + other.length.mean.value) * match.parts / 2
    wins, drawn, mean = best_of(match.best_of, of_one)
    return GameOdds(
        match,
        tuple((side, first.chance(float(chance))) for side, chance in zip(net.sides, wins, strict=True)),
        first.chance(min(1.0, max(0.0, drawn))),
        mean * (match.parts if match.halves else 1),
        mean * minutes,
    )


def _added(net: Net, course: Course) -> GameOdds:
    """The odds of several sides whose rounds are added."""
    wins, drawn = over_all_rounds(course, net.match.parts)
    rounds = net.match.parts
    named = tuple(zip(net.sides, wins, strict=True))
    return GameOdds(net.match, named, drawn, rounds, rounds * course.length.mean.value)


GROUPS = ("the first side", "the second side", "the third side", "the fourth side")


def _with_rest(match: Match, course: Course, of_one: Sequence[float]) -> GameOdds:
    """The odds of groups of which two play on each court at a time."""
    found = of_groups(match, of_one[0], of_one[1])
    wins = tuple((name, course.chance(chance)) for name, chance in zip(GROUPS, found.wins, strict=False))
    rounds = float(match.most_rounds)
    minutes = rounds * course.length.mean.value
    plays = tuple(zip(GROUPS, found.plays, strict=False))
    return GameOdds(match, wins, course.chance(min(1.0, max(0.0, found.drawn))), rounds, minutes, plays)


def _leads(net: Net, course: Course) -> Floats:
    """The chances of every lead of the first side: in points, or by a half won where there are no points."""
    if course.score.lead is not None:
        return course.score.lead
    (_, ahead), (_, behind) = odds(net, course).wins
    return np.array([behind.value, max(0.0, 1 - ahead.value - behind.value), ahead.value])


def _over_halves(match: Match, first: Floats, second: Floats) -> tuple[float, float]:
    """The chances that either group is ahead over both halves, or over all innings or rounds.

    Where tasks change, the group that begins as the first side gives away the lead of the second half.
    """
    parts = (first, second[::-1] if match.tasks_change else second)
    both = first
    for number in range(1, match.parts):
        both = np.convolve(both, parts[number % 2])
    middle = len(both) // 2
    return float(both[middle + 1 :].sum()), float(both[:middle].sum())


def best_of(rounds: int, chances: Sequence[float]) -> tuple[Floats, float, float]:
    """Best of so many rounds for sides that win a round with these chances: (wins, drawn, mean rounds).

    What the chances leave over is a drawn round; it counts as one of the n. Play stops as soon as one side
    leads by more rounds than are left, and after n rounds the side with most rounds won has won the match.
    With no drawn rounds this is the problem of points (Pascal and Fermat, 1654); summed here over all scores,
    round by round.
    """
    wins, drawn, mean = np.zeros(len(chances)), 0.0, 0.0
    rest = max(0.0, 1 - sum(chances))
    scores: dict[tuple[int, ...], float] = {(0,) * len(chances): 1.0}
    for played in range(rounds + 1):
        after: dict[tuple[int, ...], float] = {}
        for score, chance in scores.items():
            winner = _decided(score, rounds - played)
            if winner is not None or played == rounds:
                mean += played * chance
                if winner is None:
                    drawn += chance
                else:
                    wins[winner] += chance
                continue
            after[score] = after.get(score, 0.0) + chance * rest
            for side, likely in enumerate(chances):
                raised = (*score[:side], score[side] + 1, *score[side + 1 :])
                after[raised] = after.get(raised, 0.0) + chance * likely
        scores = after
    return wins, drawn, mean


def _decided(score: tuple[int, ...], left: int) -> int | None:
    """The side that leads every other by more rounds than are left, None where none does."""
    if not score:
        return None  # a game without sides: everyone for themselves, or all together
    leader = max(range(len(score)), key=score.__getitem__)
    second = max((won for side, won in enumerate(score) if side != leader), default=0)
    return leader if score[leader] - second > left else None
