"""Games looked at once each: what is proved of them, and what the forecast expects of their rounds."""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Mapping
from typing import TYPE_CHECKING

from attrs import evolve, frozen

from compose.answer.answer import Answer, not_proved, to_mend
from compose.answer.proving import proved_as_it_stands
from compose.answer.staged import Staged, staged
from compose.check import Budget, StateSpace
from compose.fit.fit import Fit, fit
from compose.fit.suggest.skeleton import skeleton
from compose.modifiers.difference.same_game import played_as
from compose.net.net import Net
from compose.staging.school_class import SchoolClass
from compose.staging.staging import stage
from compose.staging.teams import Teams, usual_teams
from grammar.finding import Finding
from grammar.game import Game
from grammar.tree import GameSheet
from library import KitItem, Norms

if TYPE_CHECKING:
    from compose.forecast.rounds.simulate import Play

TeamsOf = Callable[[Game], Teams]
ROUNDS = 200  # played where a game is too large to be worked out: enough to tell a wish met from one missed
MOST_STATES = 60_000
EVENTS = 2_000_000  # of all rounds played for one game
KEPT = 8  # spaces of at most so many states, some 100 MB each at worst


@frozen
class Numbers:
    """What a round is forecast to be: its mean length in min, turns of a pupil in a minute, and the longest mean
    wait in min (0 where nobody waits, infinite for those out for the round)."""

    minutes: float
    turns: float
    wait: float


@frozen
class Findings:
    """What is proved to be mended in a game; `whole` is False where not everything could be looked at."""

    to_mend: tuple[Finding, ...]
    whole: bool
    broken: bool = False


BROKEN = Findings((), whole=False, broken=True)


class Looker:
    """Answers about games, each worked out at most once; nets of one shape are checked only once.

    With a `group` each game is looked at as this class plays it, else with the `teams` given. `situations` counts
    those looked at so far, of all games together.
    """

    def __init__(
        self,
        granted: GameSheet,
        kit: Mapping[str, KitItem],
        norms: Norms,
        teams: TeamsOf = usual_teams,
        states: int = MOST_STATES,
        group: SchoolClass | None = None,
    ) -> None:
        self.kit = kit
        self.group = group
        self._teams = teams
        self.checked = 0
        self.situations = 0
        self._granted, self._norms, self.states = granted, norms, states
        self._proved: dict[Hashable, Answer | None] = {}
        self._numbers: dict[Hashable, Numbers | None] = {}
        self._foreseen: dict[Hashable, Findings] = {}
        self._moves: dict[Hashable, int] = {}
        self._fitted: tuple[Game, SchoolClass, float | None, Fit] | None = None
        self._shaped: tuple[Game, Hashable] | None = None

    def teams(self, game: Game) -> Teams:
        """Who plays; the usual teams where the class cannot."""
        if self.group is None:
            return self._teams(game)
        found = self.fitted(game, self.group).staging.teams
        return found if found.games else usual_teams(game)

    def answer(self, game: Game) -> Answer | None:
        """What is proved of a game, or of one whose net has the same shape; None where it cannot be played."""
        key = self.shape(game)
        if key not in self._proved:
            self.checked += 1
            made = self._staged(game)
            self._proved[key] = self._looked(made) if made is not None else None
            self._forget()
        return self._proved[key]

    def _looked(self, made: Staged) -> Answer:
        answer = proved_as_it_stands(made, Budget(self.states))
        self.situations += answer.facts.states if answer.facts is not None else 0
        return answer

    def _forget(self) -> None:
        """Keep no space but the last few, so that memory is bounded: a game's forecast comes soon after its check."""
        for key in list(self._proved)[-KEPT - 1 : -KEPT]:
            old = self._proved[key]
            self._proved[key] = evolve(old, space=None) if old is not None else None

    def findings(self, game: Game) -> Findings:
        """What is to be mended in a game."""
        answer = self.answer(game)
        if answer is None:
            return BROKEN
        return Findings(to_mend(answer.proved), whole=not not_proved(answer.proved))

    def foreseen(self, game: Game) -> Findings:
        """What the forecast finds to be mended in a game, besides what is proved."""
        key = played_as(game)
        if key not in self._foreseen:
            self._foreseen[key] = self._foresee(game)
        return self._foreseen[key]

    def _foresee(self, game: Game) -> Findings:
        from compose.answer.foreseeing import UNKNOWN, foreseen

        known = self._to_forecast(game)
        if known is None:
            return BROKEN
        told = foreseen(known, self._norms, self.kit, play=self._play(), budget=Budget(self.states))
        self._moves[played_as(game)] = _moves(told)
        whole = all(each.code != UNKNOWN for each in told.added or ())
        return Findings(to_mend(told.added or ()), whole)

    def fitted(self, game: Game, school_class: SchoolClass, round_min: float | None = None) -> Fit:
        """How a game and a class go together; the last one is kept, for several wishes ask for it in turn."""
        kept = self._fitted
        if kept is None or kept[0] is not game or kept[1:3] != (school_class, round_min):
            found = fit(game, school_class, self._norms, self.kit, round_min)
            kept = self._fitted = (game, school_class, round_min, found)
        return kept[3]

    def of_class(self, game: Game) -> tuple[Finding, ...]:
        """What is to be mended before the class, if it is one, can play a game."""
        return to_mend(self.fitted(game, self.group).staging.findings) if self.group is not None else ()

    def numbers(self, game: Game) -> Numbers | None:
        """The forecast of a game: exact where its space is small enough, or else from a few hundred rounds."""
        key = played_as(game)
        if key not in self._numbers:
            self._numbers[key] = self._forecast(game)
        return self._numbers[key]

    def _staged(self, game: Game) -> Staged | None:
        teams = self.teams(game)
        staging = stage(game, self._norms, self.kit, self.group, teams)
        if staging.refused:  # what is known of those who can play, to compare with
            staging = stage(game, self._norms, self.kit, None, evolve(teams, over=0))
        return staged(staging, self._granted).value

    def shape(self, game: Game) -> Hashable:
        """Equal for all games whose nets have the same shape on every court; the last one is kept, for it is asked of
        one game several times in turn."""
        kept = self._shaped
        if kept is None or kept[0] is not game:
            kinds = dict.fromkeys(tuple(sides.items()) for sides in self.teams(game).games)
            kept = self._shaped = (game, tuple(skeleton(game, dict(players)) for players in kinds))
        return kept[1]

    def _forecast(self, game: Game) -> Numbers | None:
        from compose.answer.foreseeing import with_means

        known = self._to_forecast(game)
        if known is None:
            return None
        told = with_means(known, self._norms, self.kit, self._play(), Budget(self.states))
        self._moves[played_as(game)] = _moves(told)
        return _numbers(told)

    def moves(self, game: Game) -> int:
        """How many moves were made in the rounds that were played of a game to forecast it."""
        return self._moves.get(played_as(game), 0)

    def _to_forecast(self, game: Game) -> Answer | None:
        """What is proved of just this game: of one of its shape, with its own numbers in the net."""
        made, alike = self._staged(game), self.answer(game)
        if made is None or alike is None:
            return None
        space = _of_one_shape(alike.space, made.net) if alike.space is not None else None
        return evolve(alike, staged=made, space=space) if space is not None else self._looked(made)

    def _play(self) -> Play:
        from compose.forecast.rounds.simulate import Play

        return Play(rounds=ROUNDS, events=EVENTS)


def _of_one_shape(space: StateSpace, net: Net) -> StateSpace | None:
    """The space of a net as that of another one of the same shape, whose numbers differ; None where the two do
    not have their places and moves in the same order."""

    def shape(one: Net) -> tuple[object, ...]:
        moves = tuple((each.side, each.outcome, each.guard, each.rate) for each in one.transitions)
        return one.places, moves, len(one.reactions), tuple(end.guard for end in one.ends)

    return evolve(space, net=net) if shape(space.net) == shape(net) else None


def _moves(answer: Answer) -> int:
    if answer.whole:
        return 0
    played = (each.forecast for each in (answer, *answer.others))
    return sum(EVENTS if each is None else int(each.course.firings.sum() * each.course.rounds) for each in played)


def _numbers(answer: Answer) -> Numbers | None:
    from compose.forecast.standings import OUT, standing_of

    told = answer.forecast
    if told is None:
        return None
    kinds = standing_of(told.net)
    waits = [
        math.inf if kinds[wait.place] == OUT else wait.mean.value
        for wait in told.waits
        if wait.in_a_round > 0 and told.course.tokens[wait.place] > 0
    ]
    return Numbers(told.course.length.mean.value, told.turns.each.value, max(waits, default=0.0))
