"""Changes to the space and the sides: the court, its areas, who is how many."""

from __future__ import annotations

import attrs

from compose.modifiers.changes.sheets import Draft, Problem
from grammar.game import Game, GameArea
from grammar.meanings import PlaceMeaning
from grammar.said import Named, quoting
from grammar.sentences import modifier as said
from grammar.sentences.base import Name, Node, Quantity
from grammar.sentences.sides import Headcount, Sides
from grammar.sentences.space import Area, Court


def make_court(draft: Draft, game: Game, sentence: said.MakeCourt) -> Problem | None:
    """Another court of the same cut."""

    def court(node: Node) -> Node:
        if isinstance(node, Court):
            return attrs.evolve(node, length=sentence.length, width=sentence.width)
        return node

    draft.change("space", court, sentence.span)
    return None


def scale_court(draft: Draft, game: Game, sentence: said.ScaleCourt) -> Problem | None:
    """A longer, shorter, wider or narrower court."""

    def court(node: Node) -> Node:
        if not isinstance(node, Court):
            return node
        if sentence.dimension == "as long":
            return attrs.evolve(node, length=_scaled(node.length, sentence.percent))
        return attrs.evolve(node, width=_scaled(node.width, sentence.percent))

    draft.change("space", court, sentence.span)
    return None


def _scaled(length: Quantity, percent: Quantity) -> Quantity:
    """To the centimetre: nobody marks out a court more finely."""
    digits = 2 if length.unit == "m" else 0
    return attrs.evolve(length, value=round(length.value * percent.value / 100, digits))


def scale_area(draft: Draft, game: Game, sentence: said.ScaleArea) -> Problem | None:
    """Strips, zones and other areas with a depth become deeper or less deep."""
    meant = [area.name for area in game.areas if area.depth_m and _means(game, sentence.what.name.text, area)]
    if not meant:
        return quoting("there is no {thing} with a depth", thing=Named(sentence.what.name.text))

    def area(node: Node) -> Node:
        if isinstance(node, Area) and node.depth and node.name.text in meant:
            return attrs.evolve(node, depth=_scaled(node.depth, sentence.percent))
        return node

    draft.change("space", area, sentence.span)
    return None


def _means(game: Game, word: str, area: GameArea) -> bool:
    meaning = game.vocabulary.get(word)
    return area.kind == word or (isinstance(meaning, PlaceMeaning) and meaning.place == area.name)


def uneven_sides(draft: Draft, game: Game, sentence: said.UnevenSides) -> Problem | None:
    """The side named last is smaller; sides that were one line become a line each, no longer mirrored."""
    if len(game.sides) < 2:
        return quoting("there is only one side")
    last, fewer = game.sides[-1].name, sentence.fewer.whole
    if game.sides[-1].least - fewer < 1:
        return quoting("nobody would be left of the {side}", side=last)
    lines = draft.lines("sides")
    for line in lines:
        sides = line.sentence
        if isinstance(sides, Sides) and any(name.text == last for name in sides.names):
            draft.put_in_place("sides", sides, tuple(_apart(sides, last, fewer)), sentence.span)
    return None


def _apart(sides: Sides, last: str, fewer: int) -> list[Sides]:
    """One sentence for the sides that stay as they are, one for the smaller side."""
    options = tuple(option for option in sides.options if option != "mirrored")
    others = tuple(name for name in sides.names if name.text != last)
    smaller = next(name for name in sides.names if name.text == last)
    count = sides.headcount
    most = count.most and attrs.evolve(count.most, value=count.most.value - fewer)
    less = attrs.evolve(count, least=attrs.evolve(count.least, value=count.least.value - fewer), most=most)
    stay = [attrs.evolve(sides, names=others, headcount=_said_for(count, others), options=options)] if others else []
    return [*stay, Sides((smaller,), attrs.evolve(less, each=None), options)]


def _said_for(count: Headcount, names: tuple[Name, ...]) -> Headcount:
    return attrs.evolve(count, each=None) if len(names) == 1 else count
