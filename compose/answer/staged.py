"""A game with so many players of each side, made into a net: what there is to be known about."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import frozen

from compose.net.from_game import net_of
from compose.net.match import changed_over
from compose.net.net import Net
from grammar.finding import Finding, Outcome
from grammar.game import Game
from grammar.tree import GameSheet


@frozen(eq=False)
class Staged:
    """`turned` is the net of the second half, where the groups change over and are not equally large; `findings` is
    what was said on the way."""

    game: Game
    players: Mapping[str, int]
    net: Net
    turned: Net | None
    findings: tuple[Finding, ...]


def staged(
    game: Game, granted: GameSheet, players: Mapping[str, int], said: tuple[Finding, ...] = ()
) -> Outcome[Staged]:
    """The game staged; `said` is what was found before, of its sheet and its modifiers."""
    made = net_of(game, granted, players)
    findings = (*said, *made.findings)
    if made.value is None:
        return Outcome(None, findings)
    other = changed_over(made.value.match, players)
    turned = net_of(game, granted, other).value if other is not None else None
    return Outcome(Staged(game, players, made.value, turned, findings), findings)
