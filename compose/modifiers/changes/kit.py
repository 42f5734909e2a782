"""Changes to the kit: more, fewer, other, larger, and where targets stand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import attrs

from compose.modifiers.changes.sheets import Draft, Problem
from grammar.game import Game, GameKit
from grammar.said import Named, quoting
from grammar.sentences import modifier as said
from grammar.sentences.base import Name, Node, Quantity
from grammar.sentences.sides import Kit, Placing
from grammar.words import plural

_EACH = ("each", "every", "their")


def add_kit(draft: Draft, game: Game, sentence: said.AddKit) -> Problem | None:
    """More of a thing; what was placed by number is placed by number still where that can be."""
    line = kit_meant(game, sentence.what)
    if line is None:
        return quoting("there is no {thing} to add to", thing=Named(sentence.what.text))
    return _more(draft, game, line, sentence.count.whole, sentence)


def add_later(draft: Draft, game: Game, sentence: said.AddLater) -> Problem | None:
    """More of a thing, of which nothing lies there at first."""
    lines = game.kit_meant(sentence.what)
    if len(lines) != 1:
        several = quoting("there are several kinds of {things}", things=Named(plural(sentence.what.text)))
        return several if lines else quoting("there is no {thing}", thing=Named(sentence.what.text))
    _counted_in_kit(draft, lines[0], lines[0].count + sentence.count.whole, sentence)
    return None


def take_kit(draft: Draft, game: Game, sentence: said.TakeKit) -> Problem | None:
    """Fewer of a thing; at least one stays."""
    line = kit_meant(game, sentence.what)
    if line is None:
        return quoting("there is no {thing} to take away", thing=Named(sentence.what.text))
    if line.count - sentence.count.whole < 1:
        return quoting("nothing would be left of the {things}", things=Named(line.plural))
    return _more(draft, game, line, -sentence.count.whole, sentence)


def _more(draft: Draft, game: Game, line: GameKit, number: int, sentence: Node) -> Problem | None:
    moved = _placed_otherwise(game, line, number)
    if isinstance(moved, Problem):
        return moved
    _counted_in_kit(draft, line, line.count + number, sentence)
    if moved:
        draft.change("set-up", lambda node: moved[1] if node == moved[0] else node, sentence.span)
    return None


def _counted_in_kit(draft: Draft, line: GameKit, total: int, sentence: Node) -> None:
    def kit(node: Node) -> Node:
        if not (isinstance(node, Kit) and node.name.text in (line.name, line.plural)):
            return node
        name = Name(line.name if total == 1 else line.plural)
        singular = node.singular or (Name(line.name) if _irregular(line) and total > 1 else None)
        return attrs.evolve(node, count=attrs.evolve(node.count, value=float(total)), name=name, singular=singular)

    draft.change("kit", kit, sentence.span)


def _placed_otherwise(game: Game, line: GameKit, number: int) -> tuple[Placing, Placing] | Problem | None:
    """The placing that says where so many more (or fewer) lie, as it is and as it becomes.

    None where a line without a number places whatever there is.
    """
    placings = [each for each in game.placings if _is(each.what.name, line) and not each.all_but]
    if _shared(placings, line):
        lying = placings[0].count.whole * len(game.sides) if placings[0].count else line.count  # others come in later
        share, over = divmod(lying + number, len(game.sides))
        return placings[0], _counted(placings[0], line, None if over else share)
    if not placings or any(each.count is None for each in placings):
        return None
    one = next((each for each in placings if each.where.determiner not in _EACH), None)
    if one is None or one.count is None:
        return quoting("the set-up does not say where other {things} should lie", things=Named(line.plural))
    left = one.count.whole + number
    if left < 1:
        return quoting(
            "too few {things} lie {preposition} {where}",
            things=Named(line.plural),
            preposition=one.preposition,
            where=one.where.words(),
        )
    return one, _counted(one, line, left)


def _shared(placings: Sequence[Placing], line: GameKit) -> bool:
    """Whether one line places all of them, as many in each of several places."""
    return len(placings) == 1 and line.owner is None and placings[0].where.determiner in _EACH


def _counted(placing: Placing, line: GameKit, count: int | None) -> Placing:
    """The placing with another number; without one it places all that there are, shared evenly."""
    what = attrs.evolve(placing.what, name=Name(line.name if count == 1 else line.plural))
    if count is None:
        return attrs.evolve(placing, count=None, what=what)
    number = attrs.evolve(placing.count or Quantity(0.0), value=float(count))
    return attrs.evolve(placing, count=number, what=what)


def deal_out(draft: Draft, game: Game, sentence: said.DealOut) -> Problem | None:
    """Where so many of a thing lie in each of several places, all that there are lie there now."""
    lines = game.kit_meant(sentence.what.name)
    if not lines:
        return quoting("there is no {thing}", thing=Named(sentence.what.name.text))

    def placing(node: Node) -> Node:
        if not isinstance(node, Placing) or node.where.determiner not in _EACH or node.count is None:
            return node
        line = next((each for each in lines if _is(node.what.name, each) and each.owner is None), None)
        return _counted(node, line, None) if line else node

    draft.change("set-up", placing, sentence.span)
    return None


def _irregular(line: GameKit) -> bool:
    return plural(line.name) != line.plural


def _is(name: Name, line: GameKit) -> bool:
    return name.text in (line.name, line.plural)


def kit_meant(game: Game, name: Name) -> GameKit | None:
    """The kit line that a modifier's word means: by name, or the most numerous of its category."""
    return max(game.kit_meant(name), key=lambda line: line.count, default=None)


def make_like(draft: Draft, game: Game, sentence: said.MakeLike) -> Problem | None:
    """All things of a kind are like another thing of the library's kit."""
    lines = game.kit_meant(sentence.what.name)
    if not lines:
        return quoting("there is no {thing}", thing=Named(sentence.what.name.text))
    like = sentence.like.name.text

    def kit(node: Node) -> Node:
        line = _line_of(node, lines)
        if isinstance(node, Kit) and line and like not in (line.like, line.name):
            return attrs.evolve(node, determiner="a", like=sentence.like.name)
        return node

    draft.change("kit", kit, sentence.span)
    return None


def scale_kit(draft: Draft, game: Game, sentence: said.ScaleKit) -> Problem | None:
    """All things of a kind are larger or smaller."""
    lines = game.kit_meant(sentence.what.name)
    if not lines:
        return quoting("there is no {thing}", thing=Named(sentence.what.name.text))

    def kit(node: Node) -> Node:
        if not (isinstance(node, Kit) and _line_of(node, lines)):
            return node
        before = node.percent.value if node.percent else 100.0
        percent = round(before * sentence.percent.value / 100, 2)
        return attrs.evolve(node, percent=None if percent == 100 else Quantity(percent, "%"))

    draft.change("kit", kit, sentence.span)
    return None


def _line_of(node: Node, lines: Iterable[GameKit]) -> GameKit | None:
    if not isinstance(node, Kit):
        return None
    return next((line for line in lines if _is(node.name, line)), None)


def stand_targets(draft: Draft, game: Game, sentence: said.StandTargets) -> Problem | None:
    """All targets stand elsewhere; how many and how far apart stays."""
    targets = [line for line in game.kit if line.category == "target"]

    def placing(node: Node) -> Node:
        if isinstance(node, Placing) and any(_is(node.what.name, line) for line in targets):
            return attrs.evolve(node, preposition=sentence.preposition, where=sentence.where)
        return node

    if not any(placing(each) is not each for each in game.placings):
        return quoting("no target stands where it could stand elsewhere")
    draft.change("set-up", placing, sentence.span)
    return None
