"""How modifiers of one remix get on: declared clashes, one undoing another, pairs whose order matters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from compose.modifiers.apply import Remix, remix
from compose.modifiers.modifier import Use
from grammar.finding import Basis, Finding, Severity
from grammar.format import format_game
from grammar.game import Game
from library import KitItem


def clashes(uses: Sequence[Use]) -> Iterator[Finding]:
    """Pairs of modifiers of which one says that it does not go with the other."""
    for first, second in combinations(uses, 2):
        names = first.modifier.name, second.modifier.name
        if names[1] in first.modifier.clashes or names[0] in second.modifier.clashes:
            title = f"`{names[0]}` and `{names[1]}` do not go together."
            places = (first.modifier.span,)
            yield Finding("M-clash", Severity.ERROR, title, second.modifier.span, "Leave one of them out.", places)


def undone(made: Remix) -> Iterator[Finding]:
    """Modifiers that change again what an earlier one put there."""
    written: dict[tuple[str, str], str] = {}
    for edit in made.edits:
        earlier = written.get((edit.section, edit.before)) if edit.before else None
        if earlier and earlier != edit.by:
            title = f"`{edit.by}` changes what `{earlier}` put there: {edit.before}"
            yield Finding("M-undone", Severity.NOTE, title, edit.why, "Leave one out if that is not meant.")
        if edit.after:
            written[edit.section, edit.after] = edit.by


def order_matters(game: Game, uses: Sequence[Use], kit: Mapping[str, KitItem]) -> Iterator[Finding]:
    """Pairs that make another game the other way round, with the lines that differ."""
    for first, second in combinations(uses, 2):
        one, other = (remix(game, pair, kit).value for pair in ((first, second), (second, first)))
        if one is None or other is None or one.game == other.game:
            continue
        differing = _differing(format_game(one.game.sheet), format_game(other.game.sheet))
        title = f"The order of `{first.modifier.name}` and `{second.modifier.name}` matters: {differing}"
        yield Finding(
            "M-order",
            Severity.NOTE,
            title,
            second.modifier.span,
            "They are applied in the order in which you name them.",
            (first.modifier.span,),
            Basis.COMPUTED,
        )


def _differing(one: str, other: str) -> str:
    ours = [line.strip() for line in one.splitlines() if line not in other.splitlines()]
    theirs = [line.strip() for line in other.splitlines() if line not in one.splitlines()]
    return f'"{"; ".join(ours[:2])}" this way round, "{"; ".join(theirs[:2])}" the other.'
