"""From the round to the match: best of n rounds, and two halves in which the sides change tasks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from attrs import frozen

from compose.forecast.chain import Floats
from compose.forecast.course import Course
from grammar.game import Game
from grammar.sentences import finish


@frozen
class Match:
    """A match of several rounds: who wins it how often, how often it is drawn, how many rounds it takes.

    `drawn` is the chance that no side has won more rounds than every other. `minutes` is play alone.
    """

    words: str
    wins: tuple[tuple[str, float], ...]
    drawn: float
    mean_rounds: float
    minutes: float


@frozen
class TwoHalves:
    """Two halves with the tasks changed over: points a half brings to each task, and who wins by points.

    `wins` are the chances of the side that begins with the first task, and of the other; `level` of a tie.
    """

    words: str
    points: tuple[tuple[str, float], ...]
    wins: tuple[tuple[str, float], ...]
    level: float
    minutes: float


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
    leader = max(range(len(score)), key=score.__getitem__)
    second = max((won for side, won in enumerate(score) if side != leader), default=0)
    return leader if score[leader] - second > left else None


def match_of(game: Game, sides: Sequence[str], chances: Sequence[float], course: Course) -> Match | None:
    """The match that the game's finish asks for, None where a round is all."""
    for sentence in game.all_of("finish", finish.BestOf):
        rounds = sentence.rounds.whole
        wins, drawn, mean = best_of(rounds, chances)
        told = tuple(zip(sides, wins.tolist(), strict=True))
        return Match(sentence.words(), told, drawn, mean, mean * course.length.mean.value)
    return None


def halves_of(game: Game, sides: Sequence[str], first: Course, second: Course | None = None) -> TwoHalves | None:
    """Two halves by points, where the finish asks for them and there are points and two sides.

    `second` is the other half where the groups are not equally large; without it both halves are alike.
    """
    sentence = next(game.all_of("finish", finish.Halves), None)
    other = second if second is not None else first
    if sentence is None or len(sides) != 2 or first.lead is None or other.lead is None:
        return None
    # The group that begins with the first task takes its lead from the first half and gives the other's away.
    both = np.convolve(first.lead, other.lead[::-1])
    middle = len(both) // 2
    wins = ((sides[0], float(both[middle + 1 :].sum())), (sides[1], float(both[:middle].sum())))
    points = tuple((side, _mean(chances)) for side, chances in zip(sides, first.points.values(), strict=True))
    minutes = first.length.mean.value + other.length.mean.value
    return TwoHalves(sentence.words(), points, wins, float(both[middle]), minutes)


def _mean(chances: Floats) -> float:
    return float(chances @ np.arange(len(chances)))
