"""A remix made into the game that it means, from the bases and modifiers that are at hand."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import Protocol

from compose.modifiers.content_hash import content_hash
from compose.modifiers.from_recipe import made
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier
from compose.modifiers.parents import lineage_of, used_in
from compose.modifiers.recipe import recipe_of
from compose.modifiers.remix import Remix
from compose.share.naming import slug
from compose.share.pack.item import Sheet, sheets_in
from grammar.finding import Finding, Outcome, Severity
from grammar.frozen import field, frozen
from grammar.game import Game
from grammar.parse import parse_bytes
from grammar.resolve import resolve
from grammar.tree import GameSheet, ModifierSheet, RemixSheet
from library import game_paths, kit_categories, kit_names, modifier_paths, remix_paths

MOST_GENERATIONS = 12


class AtHand(Protocol):
    """Where sheets are looked for, by name; None where there is none."""

    def base(self, name: str) -> GameSheet | RemixSheet | None:
        """A game or a remix."""

    def modifier(self, name: str) -> ModifierSheet | None:
        """A modifier."""


@frozen
class Sheets:
    """Sheets at hand: those given, and where they have none of a name, those of another place."""

    given: tuple[Sheet, ...]
    otherwise: AtHand | None = None
    _by_name: Mapping[tuple[bool, str], Sheet] = field(init=False, repr=False, eq=False)

    @_by_name.default
    def _(self) -> Mapping[tuple[bool, str], Sheet]:
        return {(isinstance(each, ModifierSheet), slug(each.title)): each for each in reversed(self.given)}

    def base(self, name: str) -> GameSheet | RemixSheet | None:
        here = self._by_name.get((False, slug(name)))
        if isinstance(here, GameSheet | RemixSheet):
            return here
        return self.otherwise.base(name) if self.otherwise else None

    def modifier(self, name: str) -> ModifierSheet | None:
        here = self._by_name.get((True, slug(name)))
        if isinstance(here, ModifierSheet):
            return here
        return self.otherwise.modifier(name) if self.otherwise else None


def library_contents() -> dict[str, Sheet]:
    """Everything in the library by its content hash."""
    found: dict[str, Sheet] = {}
    for path in (*game_paths(), *remix_paths(), *modifier_paths()):
        rules = parse_bytes(path.read_bytes(), str(path)).value
        found |= {content_hash(sheet): sheet for sheet in (sheets_in(rules) if rules else ())}
    return found


@frozen
class LibraryAtHand:
    """The games, remixes and modifiers of the library."""

    def base(self, name: str) -> GameSheet | RemixSheet | None:
        found = _in_library((*game_paths(), *remix_paths()), slug(name))
        return next((each for each in found if isinstance(each, GameSheet | RemixSheet)), None)

    def modifier(self, name: str) -> ModifierSheet | None:
        found = _in_library(modifier_paths(), slug(name))
        return next((each for each in found if isinstance(each, ModifierSheet)), None)


@cache
def _in_library(paths: tuple[Path, ...], stem: str) -> tuple[Sheet, ...]:
    """The first sheet of each such file."""
    read = (parse_bytes(path.read_bytes(), str(path)).value for path in paths if path.stem == stem)
    return tuple(sheets_in(rules)[0] for rules in read if rules)


def played(sheet: GameSheet | RemixSheet, at_hand: AtHand) -> Outcome[Game]:
    """The game that is played: that of a game's sheet, or what a remix makes. No value where it cannot be told."""
    if isinstance(sheet, GameSheet):
        return resolve(sheet, kit_categories())
    outcome = made_of(sheet, at_hand)
    return Outcome(outcome.value.game if outcome.value else None, outcome.findings)


def made_of(sheet: RemixSheet, at_hand: AtHand, generation: int = 0) -> Outcome[Remix]:
    """What a remix makes of its base; the base may be a remix itself."""
    lineage = lineage_of(sheet)
    recipe = recipe_of(sheet, _modifiers(sheet, at_hand))
    if recipe.value is None or lineage is None:
        return Outcome(None, recipe.findings)
    base = at_hand.base(lineage.base_name)
    if base is None or generation >= MOST_GENERATIONS or base == sheet:
        title = f"`{sheet.title}` cannot be made here: there is no game called `{lineage.base_name}`."
        if base is not None:
            title = f"`{sheet.title}` comes from itself, or from more than {MOST_GENERATIONS} remixes before it."
        return Outcome(None, (Finding("M-base", Severity.ERROR, title, sheet.span, "Get its base, too."),))
    before = _game(base, at_hand, generation)
    if before.value is None:
        return Outcome(None, before.findings)
    return made(recipe.value, before.value, kit_names())


def _game(base: GameSheet | RemixSheet, at_hand: AtHand, generation: int) -> Outcome[Game]:
    if isinstance(base, GameSheet):
        return resolve(base, kit_categories())
    outcome = made_of(base, at_hand, generation + 1)
    return Outcome(outcome.value.game if outcome.value else None, outcome.findings)


def _modifiers(sheet: RemixSheet, at_hand: AtHand) -> dict[str, Modifier]:
    found: dict[str, Modifier] = {}
    for used in used_in(sheet):
        modifier_sheet = at_hand.modifier(used.name)
        modifier = modifier_of(modifier_sheet).value if modifier_sheet else None
        if modifier is not None:
            found[used.name.lower()] = modifier
    return found


def parts_of(sheets: Iterable[Sheet], at_hand: AtHand) -> tuple[Sheet, ...]:
    """What the remixes among some sheets are made of and the library does not have: bases and modifiers, and
    what these are made of in turn."""
    library = LibraryAtHand()
    found: dict[str, Sheet] = {}
    waiting = [sheet for sheet in sheets if isinstance(sheet, RemixSheet)]
    while waiting:
        sheet = waiting.pop()
        lineage = lineage_of(sheet)
        names = [used.name for used in used_in(sheet)]
        base = at_hand.base(lineage.base_name) if lineage else None
        known = library.base(lineage.base_name) if lineage else None
        parts: list[tuple[Sheet | None, Sheet | None]] = [(base, known)]
        parts += [(at_hand.modifier(name), library.modifier(name)) for name in names]
        for part, shipped in parts:
            if part is None or (shipped is not None and content_hash(part) == content_hash(shipped)):
                continue
            content = content_hash(part)
            if content not in found:
                found[content] = part
                waiting += [part] if isinstance(part, RemixSheet) else []
    return tuple(found.values())
