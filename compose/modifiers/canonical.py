"""One form for all games that are the same game: by it remixes are compared, counted and remembered.

Two sheets may say the same in other words: most lines may stand in any order, "4 foam balls in each half" of
8 are all of them, and who throws is called the kicker where he kicks. The order of the sides and of the ways
to win has a meaning and stays.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import attrs

from compose.modifiers.content_hash import plain_text
from grammar.game import Game
from grammar.meanings import ACTORS, AgentMeaning, KitMeaning
from grammar.sentences.base import Name, Node
from grammar.sentences.finish import EndsWhen, FirstTo, LoseWhen, WinWhen
from grammar.sentences.sides import Placing, Sides
from grammar.tree import GameSheet, Line

ORDERED = (Sides, WinWhen, LoseWhen, FirstTo, EndsWhen)
_EACH = ("each", "every", "their")


def canonical_text(game: Game) -> str:
    """The text of the canonical form, without notes: equal for games that are the same game."""
    return plain_text(canonical(game))


def same_game(one: Game, other: Game) -> bool:
    """Whether two games are the same game."""
    return canonical_text(one) == canonical_text(other)


def canonical(game: Game) -> GameSheet:
    """The sheet with its lines in one order, its placings in one wording and its agents by one name."""

    def lines(written: tuple[Line, ...]) -> tuple[Line, ...]:
        said = [attrs.evolve(line, sentence=_one_wording(game, line.sentence)) for line in written]
        kept = [line for line in said if isinstance(line.sentence, ORDERED)]
        free = [line for line in said if not isinstance(line.sentence, ORDERED)]
        return (*kept, *sorted(free, key=lambda line: line.sentence.words()))

    sections = tuple(attrs.evolve(each, lines=lines(each.lines)) for each in game.sheet.sections)
    return attrs.evolve(game.sheet, head=lines(game.sheet.head), sections=sections)


def _one_wording(game: Game, sentence: Node) -> Node:
    if isinstance(sentence, Placing) and _places_all(game, sentence):
        what = attrs.evolve(sentence.what, name=Name(_plural(game, sentence)))
        return attrs.evolve(sentence, count=None, what=what)
    said = sentence.words()
    actors = {word for word in ACTORS if word in said and isinstance(game.vocabulary.get(word), AgentMeaning)}
    return _renamed(sentence, lambda word: ACTORS[0] if word in actors else word) if actors - {ACTORS[0]} else sentence


def _renamed(node: Node, called: Callable[[str], str]) -> Node:
    """The sentence with its names and possessives called otherwise."""
    changed: dict[str, Any] = {}
    for part in attrs.fields(type(node)):
        value = getattr(node, part.name)
        if isinstance(node, Name) and part.name == "text":
            changed["text"] = called(value)
        elif part.name == "possessive" and value:
            changed["possessive"] = called(value.removesuffix("'s")) + "'s"
        elif isinstance(value, Node):
            changed[part.name] = _renamed(value, called)
        elif isinstance(value, tuple):
            changed[part.name] = tuple(_renamed(each, called) if isinstance(each, Node) else each for each in value)
    return attrs.evolve(node, **changed) if changed else node


def _places_all(game: Game, placing: Placing) -> bool:
    """Whether the number that a placing gives is simply all that there are."""
    meaning = game.meaning(placing.what.name)
    if placing.all_but or not isinstance(meaning, KitMeaning):
        return False
    if placing.count is None:
        return True
    line = game.kit_named(meaning.key)
    if line.owner is not None or _placed_elsewhere(game, placing, meaning):
        return False
    places = len(game.sides) if placing.where.determiner in _EACH else 1
    return placing.count.whole * places == line.count


def _placed_elsewhere(game: Game, placing: Placing, meaning: KitMeaning) -> bool:
    return sum(game.meaning(each.what.name) == meaning for each in game.placings) > 1


def _plural(game: Game, placing: Placing) -> str:
    meaning = game.meaning(placing.what.name)
    return game.plural_of(meaning.key) if isinstance(meaning, KitMeaning) else placing.what.name.text
