"""The algebra of modifiers on one game: which change nothing, which may be repeated, which undo or ignore each other.

Games are compared by what they mean. Everything here is computed by applying, never declared.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from mixtures import mixed

from compose.modifiers.difference.same_game import played_as, same_game
from compose.modifiers.modifier import Use
from grammar.frozen import frozen
from grammar.game import Game


def twice_is_once(game: Game, use: Use) -> bool | None:
    """Whether a modifier applied twice makes what it makes once; None where it does not fit the game.

    A modifier that refuses a second time leaves nothing to do: twice is then once, too.
    """
    once = mixed(game, use).value
    if once is None:
        return None
    twice = mixed(once.game, use).value
    return twice is None or same_game(once.game, twice.game)


def undoes(game: Game, first: Use, second: Use) -> bool:
    """Whether the second modifier gives back the game that the first was applied to, but for what it says to mind."""
    made = mixed(game, first, second).value
    return made is not None and played_as(game) == played_as(made.game)


def commute(game: Game, first: Use, second: Use) -> bool | None:
    """Whether two modifiers make the same game in both orders; None where they do not go together in either."""
    one, other = (mixed(game, *pair).value for pair in ((first, second), (second, first)))
    if one is None or other is None:
        return None if one is other else False
    return same_game(one.game, other.game)


@frozen
class Algebra:
    """What the modifiers that fit a game do to each other: names, and pairs of names in the order given."""

    fits: tuple[str, ...]
    changes_nothing: tuple[str, ...]
    twice_is_once: tuple[str, ...]
    undo: tuple[tuple[str, str], ...]
    order_matters: tuple[tuple[str, str], ...]


def algebra(game: Game, uses: Sequence[Use]) -> Algebra:
    """The algebra of these modifiers on a game; pairs are those of modifiers that fit it."""
    fitting = [use for use in uses if mixed(game, use).value is not None]
    alone = {use.label: mixed(game, use).value for use in fitting}
    return Algebra(
        fits=tuple(use.label for use in fitting),
        changes_nothing=tuple(name for name, made in alone.items() if made and same_game(made.game, game)),
        twice_is_once=tuple(use.label for use in fitting if twice_is_once(game, use)),
        undo=tuple((a.label, b.label) for a in fitting for b in fitting if undoes(game, a, b)),
        order_matters=tuple(
            (a.label, b.label) for a, b in combinations(fitting, 2) if commute(game, a, b) is False
        ),
    )
