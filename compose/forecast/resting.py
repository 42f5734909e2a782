"""More groups than play at a time: the winner stays on, or all meet all; who wins most rounds, and who plays how much.

Groups are numbered in the order in which they come on; whoever comes on takes the part of the side that goes.
"""

from __future__ import annotations

from itertools import combinations

from grammar.frozen import frozen

Scores = tuple[int, ...]


@frozen
class Standing:
    """After some rounds: who plays as first and second side, who waits in turn, whose stay is longer, rounds won."""

    playing: tuple[int, int]
    waiting: tuple[int, ...]
    longer: int
    won: Scores


@frozen
class GroupOdds:
    """How often each group has won most rounds, how often none has alone, and the share of rounds that each plays."""

    wins: tuple[float, ...]
    drawn: float
    plays: tuple[float, ...]


def all_meet_all(groups: int, first: float, second: float) -> GroupOdds:
    """Every group meets every other once; `first` and `second` are the chances of the sides to win a round."""
    scores: dict[Scores, float] = {(0,) * groups: 1.0}
    for one, other in combinations(range(groups), 2):
        after: dict[Scores, float] = {}
        for score, chance in scores.items():
            for winner, likely in ((one, first), (other, second), (None, 1 - first - second)):
                now = _raised(score, winner)
                after[now] = after.get(now, 0.0) + chance * likely
        scores = after
    return GroupOdds(*_most(scores, groups), (2 / groups,) * groups)


def winner_stays(groups: int, rounds: int, first: float, second: float) -> GroupOdds:
    """So many rounds; who loses goes to the end of those that wait. After a draw whoever has played longer goes."""
    begin = Standing((0, 1), tuple(range(2, groups)), 0, (0,) * groups)
    standings, plays = {begin: 1.0}, [0.0] * groups
    for _ in range(rounds):
        after: dict[Standing, float] = {}
        for each, chance in standings.items():
            for group in each.playing:
                plays[group] += chance / rounds
            for seat, likely in ((0, first), (1, second), (None, 1 - first - second)):
                now = _next(each, seat)
                after[now] = after.get(now, 0.0) + chance * likely
        standings = after
    scores: dict[Scores, float] = {}
    for each, chance in standings.items():
        scores[each.won] = scores.get(each.won, 0.0) + chance
    return GroupOdds(*_most(scores, groups), tuple(plays))


def _next(now: Standing, seat: int | None) -> Standing:
    """After a round that was won in a seat, or by nobody."""
    going = 1 - seat if seat is not None else now.longer
    staying = 1 - going
    group = now.playing[going]
    queue = (*now.waiting, group)
    playing = (now.playing[0], queue[0]) if going == 1 else (queue[0], now.playing[1])
    won = _raised(now.won, now.playing[seat] if seat is not None else None)
    return Standing(playing, queue[1:], staying, won)


def _raised(score: Scores, winner: int | None) -> Scores:
    return tuple(number + (group == winner) for group, number in enumerate(score))


def _most(scores: dict[Scores, float], groups: int) -> tuple[tuple[float, ...], float]:
    """How often each group alone has won most rounds, and how often none has."""
    wins, drawn = [0.0] * groups, 0.0
    for score, chance in scores.items():
        best = [group for group, number in enumerate(score) if number == max(score)]
        if len(best) == 1:
            wins[best[0]] += chance
        else:
            drawn += chance
    return tuple(wins), drawn
