"""What is shared: a game, a remix or a modifier, with its credit, its licence and where it comes from."""

from __future__ import annotations

from collections.abc import Iterable

from attrs import frozen

from compose.modifiers.modifier import Use
from compose.share.content_hash import content_hash
from compose.share.naming import slug
from grammar.format import format_game, format_modifier
from grammar.sentences.head import Licence, Told
from grammar.tree import GameSheet, Line, ModifierSheet

FOLDERS = {"game": "games", "remix": "remixes", "modifier": "modifiers"}
KINDS = tuple(FOLDERS)
ENDING = ".rules"


@frozen
class Used:
    """A modifier of a remix: its name, the content hash of its sheet, and the values given, in words."""

    name: str
    content: str
    values: tuple[tuple[str, str], ...] = ()

    def words(self) -> str:
        """ "add balls (n 3)"."""
        given = ", ".join(f"{name} {value}" for name, value in self.values)
        return f"{self.name} ({given})" if given else self.name


@frozen
class Lineage:
    """What a remix was made of: a base by name and content hash, and modifiers in the order applied."""

    base_name: str
    base_content: str
    modifiers: tuple[Used, ...]

    def words(self) -> str:
        """ "Lantern Row with roll instead, then add balls (n 3)"."""
        uses = ", then ".join(used.words() for used in self.modifiers)
        return f"{self.base_name} with {uses}" if uses else self.base_name


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


def item_of(sheet: GameSheet | ModifierSheet, lineage: Lineage | None = None, history: Iterable[str] = ()) -> Item:
    """The item that a sheet is: a modifier, a game, or with a lineage a remix."""
    if isinstance(sheet, ModifierSheet):
        kind, lines, text = "modifier", sheet.lines, format_modifier(sheet)
    else:
        kind, lines, text = "remix" if lineage else "game", sheet.head, format_game(sheet)
    content = content_hash(sheet)
    licences = [line.sentence.identifier for line in lines if isinstance(line.sentence, Licence)]
    return Item(
        kind,
        sheet.title,
        text,
        content,
        " ".join(_told(lines, "about")),
        _told(lines, "credit"),
        licences[0] if licences else None,
        lineage,
        tuple(dict.fromkeys(each for each in history if each != content)),
    )


def _told(lines: tuple[Line, ...], topic: str) -> tuple[str, ...]:
    told = (line.sentence for line in lines if isinstance(line.sentence, Told))
    return tuple(each.text for each in told if each.topic == topic)


def used(use: Use, sheet: ModifierSheet) -> Used:
    """How a lineage keeps a modifier that was applied; `sheet` is the sheet that the modifier was read from."""
    values = tuple((name, value.words()) for name, value in use.values.items())
    return Used(use.modifier.name, content_hash(sheet), values)
