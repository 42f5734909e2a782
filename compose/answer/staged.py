"""A game staged for a class, made into nets: what there is to be known about."""

from __future__ import annotations

from collections.abc import Mapping

from compose.net.from_game import net_of
from compose.net.match import changed_over
from compose.net.net import Net
from compose.staging.staging import Staging
from grammar.finding import Finding, Outcome
from grammar.frozen import evolve, frozen
from grammar.game import Game
from grammar.tree import GameSheet


@frozen(eq=False)
class Staged:
    """The game on one court, which `courts` of the class are like.

    `turned` is the net of the second half, where the groups change over and are not equally large; `findings` is
    what was said on the way. `others` are the courts with other numbers of players, each with no others of its own.
    """

    staging: Staging
    players: Mapping[str, int]
    net: Net
    turned: Net | None
    findings: tuple[Finding, ...]
    courts: int = 1
    others: tuple[Staged, ...] = ()

    @property
    def game(self) -> Game:
        return self.staging.game

    @property
    def pupils(self) -> int:
        """How many play on all courts like this one."""
        return self.courts * sum(self.players.values())


def staged(staging: Staging, granted: GameSheet, said: tuple[Finding, ...] = ()) -> Outcome[Staged]:
    """The games of a class as nets; `said` is what was found before, of the sheet and its modifiers."""
    if staging.refused:
        return Outcome(None, (*said, *staging.findings))
    made = [_court(staging, court.players, number, granted) for court, number in staging.kinds]
    findings = tuple(dict.fromkeys((*said, *(finding for each in made for finding in each.findings))))
    nets = [each.value for each in made if each.value is not None]
    if len(nets) < len(made):
        return Outcome(None, findings)
    return Outcome(evolve(nets[0], findings=findings, others=tuple(nets[1:])), findings)


def _court(staging: Staging, players: Mapping[str, int], courts: int, granted: GameSheet) -> Outcome[Staged]:
    ages = staging.school_class.ages_years
    made = net_of(staging.game, granted, players, ages)
    if made.value is None:
        return Outcome(None, made.findings)
    other = changed_over(made.value.match, players)
    turned = net_of(staging.game, granted, other, ages).value if other is not None else None
    return Outcome(Staged(staging, players, made.value, turned, made.findings, courts), made.findings)
