"""Games looked at once each: their findings, and the course of their rounds."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from attrs import frozen

from compose.check import Budget, check
from compose.check.explore import TooLarge, explore
from compose.fit.suggest.skeleton import skeleton
from compose.modifiers.canonical import canonical_text
from compose.net.from_game import net_of
from compose.net.net import Net
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.tree import GameSheet
from library import KitItem, Norms

Players = Callable[[Game], Mapping[str, int]]
SILENT = ("C-budget", "C-too-large")
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

    def findings(self, game: Game, seconds: float) -> Findings:
        """What is to be mended in a game."""
        key = skeleton(game, self.players(game))
        if key not in self._findings:
            self._findings[key] = self._checked(game, seconds)
        return self._findings[key]

    def _checked(self, game: Game, seconds: float) -> Findings:
        self.checked += 1
        net = self._net(game)
        if net is None:
            return BROKEN
        result = check(net, Budget(self._states, seconds))
        warned = tuple(each for each in result.findings if each.severity is not Severity.NOTE)
        told = tuple(each for each in warned if each.code not in SILENT)
        return Findings(told, whole=len(told) == len(warned))

    def _net(self, game: Game) -> Net | None:
        return net_of(game, self._granted, self.players(game)).value

    def numbers(self, game: Game, seconds: float) -> Numbers | None:
        """The forecast of a game: exact where its space is small enough, or else from a few hundred rounds."""
        key = canonical_text(game)
        if key not in self._numbers:
            net = self._net(game)
            self._numbers[key] = _forecast(net, self._norms, self.kit, self._states, seconds) if net else None
        return self._numbers[key]


def _forecast(net: Net, norms: Norms, kit: Mapping[str, KitItem], states: int, seconds: float) -> Numbers | None:
    from compose.forecast.chances import chances
    from compose.forecast.exact import exact_course
    from compose.forecast.simulate import Play, simulate
    from compose.forecast.turns import turns

    constants = chances(net, norms, kit)
    space = explore(net, Budget(states, seconds))
    if isinstance(space, TooLarge) or not space.complete:
        played = simulate(net, constants, FOR_LESSON_MIN, Play(rounds=200, batch=200, seconds=seconds))
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
    Operations Research 9(3), 1961): token minutes over arrivals, those waiting from the start among them."""
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
