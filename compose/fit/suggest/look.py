"""Games looked at once each: their findings, and the course of their rounds."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from attrs import evolve, frozen

from compose.check import Budget, StateSpace, TooLarge, check, explore
from compose.fit.suggest.skeleton import skeleton
from compose.modifiers.canonical import canonical_text
from compose.net.from_game import net_of
from compose.net.net import Net
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.tree import GameSheet
from library import KitItem, Norms

Players = Callable[[Game], Mapping[str, int]]
SILENT = ("C-budget", "C-too-large", "C-unfinished")  # it could not look at everything
FOR_LESSON_MIN = 30.0  # a game without a clock that may never end is followed for so long
MOST_STATES = 60_000


@frozen
class Numbers:
    """What a round is forecast to be: its mean length in min, turns of a pupil in a minute, and the longest mean
    wait in min (0 where nobody waits, infinite for those out for the round); None where it was not worked out."""

    minutes: float
    turns: float
    wait: float


@frozen
class Findings:
    """What the check finds to mend in a game; `whole` is False where it could not look at everything."""

    to_mend: tuple[Finding, ...]
    whole: bool
    broken: bool = False


BROKEN = Findings((), whole=False, broken=True)


class Looker:
    """Answers about games, each worked out at most once; nets of one shape are checked only once."""

    def __init__(
        self, granted: GameSheet, kit: Mapping[str, KitItem], norms: Norms, players: Players, states: int = MOST_STATES
    ) -> None:
        self.kit = kit
        self.players = players
        self.checked = 0
        self._granted, self._norms, self._states = granted, norms, states
        self._findings: dict[str, Findings] = {}
        self._numbers: dict[str, Numbers | None] = {}
        self._spaces: dict[str, StateSpace] = {}

    def findings(self, game: Game, seconds: float) -> Findings:
        """What is to be mended in a game."""
        key = skeleton(game, self.players(game))
        if key not in self._findings:
            self._findings[key] = self._checked(game, key, seconds)
        return self._findings[key]

    def _checked(self, game: Game, key: str, seconds: float) -> Findings:
        self.checked += 1
        lowered = net_of(game, self._granted, self.players(game))
        if lowered.value is None:
            return BROKEN
        result = check(lowered.value, Budget(self._states, seconds))
        if result.space is not None and result.space.complete:
            self._spaces[key] = result.space
        warned = tuple(each for each in (*lowered.findings, *result.findings) if each.severity is not Severity.NOTE)
        told = tuple(each for each in warned if each.code not in SILENT)
        return Findings(told, whole=len(told) == len(warned))

    def _net(self, game: Game) -> Net | None:
        return net_of(game, self._granted, self.players(game)).value

    def numbers(self, game: Game, seconds: float) -> Numbers | None:
        """The forecast of a game: exact where its space is small enough, or else from a few hundred rounds."""
        key = canonical_text(game)
        if key not in self._numbers:
            net = self._net(game)
            budget = Budget(self._states, seconds)
            known = self._spaces.get(skeleton(game, self.players(game)))
            space = _of_one_shape(known, net) if known and net else None
            self._numbers[key] = _forecast(net, space, self._norms, self.kit, budget) if net else None
        return self._numbers[key]


def _of_one_shape(space: StateSpace, net: Net) -> StateSpace | None:
    """The space of a net as that of another one of the same shape, whose numbers differ; None where the two do
    not have their places and moves in the same order."""

    def shape(one: Net) -> tuple[object, ...]:
        moves = tuple((each.side, each.outcome, each.guard, each.rate) for each in one.transitions)
        return one.places, moves, len(one.reactions), tuple(end.guard for end in one.ends)

    return evolve(space, net=net) if shape(space.net) == shape(net) else None


def _forecast(
    net: Net, known: StateSpace | None, norms: Norms, kit: Mapping[str, KitItem], budget: Budget
) -> Numbers | None:
    from compose.forecast.chances import chances
    from compose.forecast.exact import exact_course
    from compose.forecast.simulate import Play, simulate
    from compose.forecast.turns import turns

    constants = chances(net, norms, kit)
    space = known or explore(net, budget)
    if isinstance(space, TooLarge) or not space.complete:
        played = simulate(net, constants, FOR_LESSON_MIN, Play(rounds=200, batch=800))
        if played is None:
            return None
        course = played.course
    else:
        course = exact_course(space, constants, FOR_LESSON_MIN, quantiles=False)
    longest = max((_mean_wait(net, course, place) for place in _waiting(net)), default=0.0)
    return Numbers(course.length.mean.value, turns(net, course).each.value, longest)


def _waiting(net: Net) -> tuple[int, ...]:
    from compose.forecast.standings import idle_places

    return idle_places(net)


def _mean_wait(net: Net, course: object, place: int) -> float:
    """The mean wait in a place by Little's law (J. D. C. Little, "A proof for the queuing formula L = lambda W",
    Operations Research 9(3), 1961): token minutes over arrivals, those waiting from the start among them.

    Whoever finds no room there counts as one who waits for no time."""
    from compose.forecast.course import Course
    from compose.net.net import Move

    assert isinstance(course, Course)
    minutes = float(course.tokens[place])
    if net.places[place].name.endswith("/out"):
        return math.inf if minutes > 0 else 0.0
    arrived = float(net.places[place].start)
    for transition, times in zip(net.transitions, course.firings, strict=True):
        arrived += times * sum(isinstance(each, Move) and each.target == place for each in transition.effects)
    return minutes / arrived if arrived > 0 else 0.0
