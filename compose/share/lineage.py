"""Does a remix follow from what it says it was made of? Told by making it again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import Enum

import attrs

from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use, modifier_of
from compose.share.content_hash import content_hash
from compose.share.item import Item, Lineage, Used
from grammar.game import Game
from grammar.parse import parse_bytes
from grammar.resolve import resolve
from grammar.sentences.base import Quantity
from grammar.tree import GameSheet, ModifierSheet
from library import game_paths, kit_categories, kit_names, modifier_paths

Sheets = Mapping[str, GameSheet | ModifierSheet]


class Descent(Enum):
    """What making a remix again told."""

    FOLLOWS = "follows from its base and modifiers"
    EDITED = "was edited by hand after it was made from its base and modifiers"
    UNKNOWN = "cannot be made again here: its base or a modifier is not at hand"


def by_content(sheets: Iterable[GameSheet | ModifierSheet]) -> Sheets:
    """Sheets by their content hashes."""
    return {content_hash(sheet): sheet for sheet in sheets}


def library_sheets() -> Sheets:
    """The games and modifiers of the library by their content hashes."""
    found: list[GameSheet | ModifierSheet] = []
    for path in (*game_paths(), *modifier_paths()):
        rules = parse_bytes(path.read_bytes(), str(path)).value
        if rules is not None:
            found += [*rules.games, *rules.modifiers]
    return by_content(found)


def descent(item: Item, sheet: GameSheet, known: Sheets) -> Descent:
    """Whether a remix is what its lineage makes of its base; its title and notes may differ."""
    made = made_again(item.lineage, known) if item.lineage else None
    if made is None:
        return Descent.UNKNOWN
    same = content_hash(attrs.evolve(made.sheet, title=sheet.title)) == content_hash(sheet)
    return Descent.FOLLOWS if same else Descent.EDITED


def made_again(lineage: Lineage, known: Sheets) -> Game | None:
    """The game that a lineage makes, or None where a part of it is not known or does not apply."""
    base = known.get(lineage.base_content)
    game = resolve(base, kit_categories()).value if isinstance(base, GameSheet) else None
    uses = [_use(used, known) for used in lineage.modifiers]
    if game is None or None in uses:
        return None
    outcome = remix(game, [use for use in uses if use is not None], kit_names())
    return outcome.value.game if outcome.value else None


def _use(used: Used, known: Sheets) -> Use | None:
    sheet = known.get(used.content)
    modifier = modifier_of(sheet).value if isinstance(sheet, ModifierSheet) else None
    if modifier is None:
        return None
    return Use(modifier, {name: _quantity(words) for name, words in used.values})


def _quantity(words: str) -> Quantity:
    number, _, unit = words.partition(" ")
    return Quantity(float(number), unit)
