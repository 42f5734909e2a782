"""More groups than two: the winner stays on, all meet all, winners meet; who wins most rounds, who plays how much.

Groups are numbered in the order in which they come on; whoever comes on takes the part of the side that goes.
"""

from __future__ import annotations

from itertools import combinations, permutations, product
from math import comb

import numpy as np

from compose.forecast.chain.chain import Floats
from compose.net.match import Match
from grammar.core.ends import Meeting
from grammar.frozen import frozen

Scores = tuple[int, ...]
SEATINGS = tuple(permutations(range(4)))  # who plays as which side of the first court and of the second


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


def of_groups(match: Match, first: float, second: float) -> GroupOdds:
    """Who wins most rounds of a match of several groups; `first` and `second`: the chances of the sides in a round."""
    match match.meeting:
        case Meeting.WINNER_STAYS:
            return winner_stays(match.groups, match.rounds, first, second)
        case Meeting.WINNERS_MEET:
            return winners_meet(match.rounds, first, second)
    matches = match.rounds * match.courts
    return all_meet_all(match.groups, first, second, matches // comb(match.groups, 2), match.on_share)


def all_meet_all(groups: int, first: float, second: float, times: int = 1, plays: float | None = None) -> GroupOdds:
    """Every group meets every other so many times, each as the other side the next time."""
    scores: dict[Scores, float] = {(0,) * groups: 1.0}
    pairs = list(combinations(range(groups), 2))
    meetings = [pair if time % 2 == 0 else pair[::-1] for time in range(times) for pair in pairs]
    for one, other in meetings:
        after: dict[Scores, float] = {}
        for score, chance in scores.items():
            for winner, likely in ((one, first), (other, second), (None, 1 - first - second)):
                now = _raised(score, winner)
                after[now] = after.get(now, 0.0) + chance * likely
        scores = after
    return GroupOdds(*_most(scores, groups), (plays if plays is not None else 2 / groups,) * groups)


def winners_meet(rounds: int, first: float, second: float) -> GroupOdds:
    """Four groups on two courts: after each round the winners meet, and so do the losers; after a draw a lot decides
    who goes on with the winners."""
    chances = np.zeros((len(SEATINGS), *(rounds + 1,) * 4))  # of each seating with each score
    chances[0, 0, 0, 0, 0] = 1.0
    for done in range(rounds):
        chances = _round_of_four(chances, done, first, second)
    scores = chances.sum(axis=0)
    won = np.indices(scores.shape)
    best = won == won.max(axis=0)
    alone = best.sum(axis=0) == 1
    wins = tuple(float(scores[each & alone].sum()) for each in best)
    return GroupOdds(wins, float(scores[~alone].sum()), (1.0,) * 4)


def _round_of_four(chances: Floats, done: int, first: float, second: float) -> Floats:
    """The chances of seatings and scores after one round more; in the rounds done nobody has won more than these."""
    lot = (1 - first - second) / 2
    ways = [way for way in ((0, 0, first), (1, 1, second), (0, None, lot), (1, None, lot)) if way[2] > 0]
    after = np.zeros_like(chances)
    for seats, chance in zip(SEATINGS, chances[:, : done + 1, : done + 1, : done + 1, : done + 1], strict=True):
        for (up, won, likely), (up_too, won_too, likely_too) in product(ways, ways):
            on_first, on_second = seats[:2], seats[2:]
            winners = [group[seat] for group, seat in ((on_first, won), (on_second, won_too)) if seat is not None]
            then = (on_first[up], on_second[up_too], on_first[1 - up], on_second[1 - up_too])
            score = tuple(slice(group in winners, done + 1 + (group in winners)) for group in range(4))
            after[SEATINGS.index(then)][score] += likely * likely_too * chance
    return after


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
