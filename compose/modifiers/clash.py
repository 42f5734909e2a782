"""How modifiers of one remix get on: declared clashes, one undoing another, pairs whose order matters."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from itertools import combinations

from compose.modifiers.apply import further, remix
from compose.modifiers.content_hash import plain_text
from compose.modifiers.difference.same_game import same_game
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from grammar.finding import Basis, Finding, Outcome, Severity
from grammar.game import Game
from grammar.said import Named, english, said
from library import KitItem

LEFT_OUT = "Leave one of them out."


def clashes(uses: Sequence[Use]) -> Iterator[Finding]:
    """Pairs of modifiers of which one says that it does not go with the other."""
    for first, second in combinations(uses, 2):
        if clash(first, second):
            names = {"one": Named(first.modifier.name), "other": Named(second.modifier.name)}
            told = said("`{one}` and `{other}` do not go together.", **names), said(LEFT_OUT)
            places, place = (first.modifier.span,), second.modifier.span
            yield Finding("M-clash", Severity.ERROR, english(told[0]), place, LEFT_OUT, places, said=told)


def clash(first: Use, second: Use) -> bool:
    """Whether one of two modifiers says that it does not go with the other."""
    one, other = first.modifier, second.modifier
    return other.name in one.clashes or one.name in other.clashes


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
    """Pairs that make another game the other way round, with the lines that differ; and pairs that go together
    only one way round."""
    alone = cache(lambda number: remix(game, [uses[number]], kit))
    return orders_told(uses, lambda one, other: further(alone(one), uses[other], kit))


def orders_told(uses: Sequence[Use], made: Callable[[int, int], Outcome[Remix]]) -> Iterator[Finding]:
    """The same where somebody else makes the game of two of them, by their numbers, and may know it already."""
    for (one, first), (other, second) in combinations(enumerate(uses), 2):
        told = _told(made(one, other), made(other, one))
        if told:
            title = f"The order of `{first.modifier.name}` and `{second.modifier.name}` matters: {told}"
            hint = "They are applied in the order in which you name them."
            places = (first.modifier.span,)
            place = second.modifier.span
            yield Finding("M-order", Severity.NOTE, title, place, hint, places, Basis.COMPUTED)


def _told(one: Outcome[Remix], other: Outcome[Remix]) -> str | None:
    """What differs between the two orders of a pair, or None where nothing does."""
    if one.value is None and other.value is None:
        return None
    if one.value is None or other.value is None:
        way, why = ("this", one) if one.value is None else ("the other", other)
        return f"{way} way round, {why.findings[0].title}"
    if same_game(one.value.game, other.value.game):
        return None
    return _differing(*(plain_text(each.game.sheet) for each in (one.value, other.value)))


def _differing(one: str, other: str) -> str:
    ours = [line.strip() for line in one.splitlines() if line not in other.splitlines()]
    theirs = [line.strip() for line in other.splitlines() if line not in one.splitlines()]
    if not ours and not theirs:
        return "its lines stand in another order, and the first that holds decides."
    return f"{_quoted(ours)} this way round, {_quoted(theirs)} the other."


def _quoted(lines: Sequence[str]) -> str:
    return f'"{"; ".join(lines[:2])}"' if lines else "nothing of it"
