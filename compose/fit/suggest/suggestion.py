"""What is suggested: the sets found, each without what is not needed, and what each modifier bought."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.search import Found, Node
from compose.fit.suggest.wish import Wish
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from grammar.game import Game


@frozen
class Bought:
    """A modifier of a set and the wishes that would be missed without it; `needed_by` names modifiers that would
    not fit without it."""

    use: Use
    wishes: tuple[str, ...]
    needed_by: tuple[str, ...] = ()


@frozen
class Suggestion:
    """A set of modifiers that meets all wishes, in the order to apply them; the fewest changed lines come first."""

    remix: Remix
    bought: tuple[Bought, ...]

    @property
    def edits(self) -> int:
        """How many lines of the game change."""
        return len(self.remix.edits)


def suggestions(found: Found, wishes: Sequence[Wish], looker: Looker, most: int = 5) -> tuple[Suggestion, ...]:
    """The sets of a search, least change first; of sets with the same modifiers only the one that changes least."""
    made: dict[frozenset[str], Suggestion] = {}
    for node in found.solutions:
        suggestion = _suggestion(found.base.game, _needed(found.base.game, node.uses, wishes, looker), wishes, looker)
        names = frozenset(each.use.modifier.name for each in suggestion.bought)
        if names not in made or _change(suggestion) < _change(made[names]):
            made[names] = suggestion
    smallest = [each for names, each in made.items() if not any(other < names for other in made)]
    return tuple(sorted(smallest, key=_change)[:most])


def _change(suggestion: Suggestion) -> tuple[int, int, int]:
    """How much a suggestion changes: lines, modifiers, values other than the usual ones."""
    values = sum(len(each.use.values) for each in suggestion.bought)
    return suggestion.edits, len(suggestion.bought), values


def _needed(game: Game, uses: tuple[Use, ...], wishes: Sequence[Wish], looker: Looker) -> tuple[Use, ...]:
    """The uses without those that the others do without."""
    for use in uses:
        rest = tuple(each for each in uses if each is not use)
        if missed(game, rest, wishes, looker) == ():
            return _needed(game, rest, wishes, looker)
    return uses


def missed(game: Game, uses: Sequence[Use], wishes: Iterable[Wish], looker: Looker) -> tuple[str, ...] | None:
    """The wishes, in words, that a set of modifiers misses; None where they do not go together."""
    made = remix(game, uses, looker.kit).value
    if made is None:
        return None
    return tuple(wish.words() for wish in wishes if wish.gap(made.game, looker) > 0)


def _suggestion(game: Game, uses: tuple[Use, ...], wishes: Sequence[Wish], looker: Looker) -> Suggestion:
    made = remix(game, uses, looker.kit).value
    assert made is not None
    return Suggestion(made, tuple(_bought(game, uses, use, wishes, looker) for use in uses))


def _bought(game: Game, uses: tuple[Use, ...], use: Use, wishes: Sequence[Wish], looker: Looker) -> Bought:
    rest = [each for each in uses if each is not use]
    without = missed(game, rest, wishes, looker)
    return Bought(use, (), tuple(each.label for each in rest)) if without is None else Bought(use, without)


def unmet(node: Node, wishes: Sequence[Wish]) -> tuple[str, ...]:
    """The wishes that a set misses, in words."""
    return tuple(wish.words() for wish, gap in zip(wishes, node.gaps, strict=True) if gap)
