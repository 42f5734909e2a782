"""The whole way on one page: one function for each arrow, findings gathered as they come."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

import library
from compose.answer.staged import Staged, staged
from compose.modifiers.remix import Remix
from compose.net.net import Net
from compose.staging.staging import Staging
from compose.terminal.answer import stop
from compose.terminal.typed.classes import Who, staging_of
from compose.terminal.typed.finding_games import game_of, granted, kit, rules_of, use
from grammar.finding import Finding, Outcome
from grammar.frozen import frozen
from grammar.game import Game

if TYPE_CHECKING:
    from compose.answer.answer import Answer
    from compose.check import Budget
    from compose.modifiers.modifier import Use


@frozen
class Ready:
    """A remixed game, staged for so many players of each side."""

    remix: Remix
    staged: Staged

    @property
    def game(self) -> Game:
        return self.remix.game

    @property
    def staging(self) -> Staging:
        return self.staged.staging

    @property
    def players(self) -> Mapping[str, int]:
        return self.staged.players

    @property
    def net(self) -> Net:
        return self.staged.net

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was said on the way to the net."""
        return self.staged.findings


def remixed(name: str, modifiers: Sequence[str], as_json: bool = False) -> tuple[Remix, tuple[Finding, ...]]:
    """Game and modifiers by name → remix; ends the command where they do not go together.

    What applies modifiers is loaded only where there are some.
    """
    rules = rules_of(name, as_json)
    uses = [use(written, as_json) for written in modifiers]
    if rules.games and not uses:
        base = game_of(rules, as_json)
        return Remix(base, base), ()
    from compose.modifiers.clash import order_matters, undone
    from compose.terminal.remix_files import remix_of_file

    outcome = _remix_of_game(game_of(rules, as_json), uses) if rules.games else remix_of_file(rules, uses, as_json)
    if outcome.value is None:
        stop(outcome.findings, as_json)
    made = outcome.value
    return made, (*outcome.findings, *undone(made), *order_matters(made.base, made.uses, kit()))


def _remix_of_game(base: Game, uses: Sequence[Use]) -> Outcome[Remix]:
    from compose.modifiers.apply import remix
    from compose.modifiers.clash import clashes

    clashing = tuple(clashes(uses))
    if clashing:
        return Outcome(None, clashing)
    made = remix(base, uses, kit())
    if made.value is not None:
        return made
    from compose.modifiers.kin import with_kin

    return Outcome(None, with_kin(made.findings, base, [each.modifier for each in uses], kit()))


def staging_for(made: Remix, who: Who, as_json: bool = False) -> Staging:
    """A remix staged for whoever was named; ends the command where they cannot play it."""
    found = staging_of(made.game, who, as_json)
    if found.refused:
        stop(found.refused, as_json)
    return found


def ready(name: str, modifiers: Sequence[str], who: Who, as_json: bool = False) -> Ready:
    """Names → nets."""
    made, said = remixed(name, modifiers, as_json)
    return ready_of(made, staging_for(made, who, as_json), said, as_json)


def ready_of(made: Remix, staging: Staging, said: tuple[Finding, ...], as_json: bool = False) -> Ready:
    """Staging → nets; ends the command where it cannot be played."""
    outcome = staged(staging, granted(), said)
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return Ready(made, outcome.value)


def checked(prepared: Ready, budget: Budget | None = None) -> Answer:
    """Net → what is proved. The check is loaded here: commands that need none start faster."""
    from compose.answer.proving import proved
    from compose.check.space import USUAL

    return proved(prepared.staged, budget or USUAL)


def answered(prepared: Ready, budget: Budget | None = None) -> Answer:
    """Net → what is proved and what the forecast adds."""
    from compose.answer.foreseeing import foreseen
    from compose.check.space import USUAL
    from compose.forecast.rounds.simulate import Play

    budget = budget or USUAL
    play = Play(keep_going=budget.keep_going)
    return foreseen(checked(prepared, budget), library.norms(), kit(), play=play, budget=budget)
