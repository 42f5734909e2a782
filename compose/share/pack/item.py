"""What is shared: a game, a remix or a modifier, with its credit, its licence and where it comes from."""

from __future__ import annotations

from collections.abc import Iterable

from compose.modifiers.content_hash import content_hash
from compose.modifiers.heads import licence_in, told_in
from compose.modifiers.parents import Lineage, lineage_of
from compose.share.naming import slug
from grammar.format import format_game, format_plain
from grammar.frozen import frozen
from grammar.tree import GameSheet, ModifierSheet, RemixSheet, RuleFile

Sheet = GameSheet | ModifierSheet | RemixSheet
FOLDERS = {"game": "games", "remix": "remixes", "modifier": "modifiers"}
KINDS = tuple(FOLDERS)
ENDING = ".rules"


@frozen
class Item:
    """One thing to share. `text` is canonical, notes kept; `history` holds the content hashes that the
    thing had before, the oldest first, as far as they are known."""

    kind: str
    name: str
    text: str
    content: str
    about: str
    credit: tuple[str, ...]
    licence: str | None
    lineage: Lineage | None = None
    history: tuple[str, ...] = ()

    @property
    def slug(self) -> str:
        return slug(self.name)

    @property
    def path(self) -> str:
        """Where it lies in a pack or on a shelf: "games/lantern-row.rules"."""
        return f"{FOLDERS[self.kind]}/{self.slug}{ENDING}"

    @property
    def key(self) -> tuple[bool, str]:
        """Equal for two things that go by one name: games and remixes share their names, modifiers do not."""
        return self.kind == "modifier", self.slug


def kind_of(sheet: Sheet) -> str:
    """ "game", "remix" or "modifier"."""
    return type(sheet).__name__.removesuffix("Sheet").lower()


def sheets_in(rules: RuleFile) -> tuple[Sheet, ...]:
    """What a file holds that can be shared."""
    found: list[Sheet] = [*rules.games, *rules.remixes, *rules.modifiers]
    return tuple(found)


def item_of(sheet: Sheet, history: Iterable[str] = ()) -> Item:
    """The item that a sheet is."""
    game = isinstance(sheet, GameSheet)
    lines = sheet.head if isinstance(sheet, GameSheet) else sheet.lines
    content = content_hash(sheet)
    return Item(
        kind_of(sheet),
        sheet.title,
        format_game(sheet) if game else format_plain(sheet),  # type: ignore[arg-type]
        content,
        " ".join(told_in(lines, "about")),
        told_in(lines, "credit"),
        licence_in(lines),
        lineage_of(sheet) if isinstance(sheet, RemixSheet) else None,
        tuple(dict.fromkeys(each for each in history if each != content)),
    )
