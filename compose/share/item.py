"""What is shared: a game, a remix or a modifier, with its credit, its licence and where it comes from."""

from __future__ import annotations

from collections.abc import Iterable

from attrs import frozen

from compose.modifiers.content_hash import content_hash
from compose.share.naming import slug
from grammar.format import format_game, format_plain
from grammar.sentences import remix as said
from grammar.sentences.head import Licence, Told
from grammar.tree import GameSheet, Line, ModifierSheet, RemixSheet, RuleFile

Sheet = GameSheet | ModifierSheet | RemixSheet
FOLDERS = {"game": "games", "remix": "remixes", "modifier": "modifiers"}
KINDS = tuple(FOLDERS)
ENDING = ".rules"


@frozen
class Used:
    """A modifier of a remix, with the values given to it, in words."""

    name: str
    values: tuple[tuple[str, str], ...] = ()

    def words(self) -> str:
        """ "add balls (n 3)"."""
        given = ", ".join(f"{name} {value}" for name, value in self.values)
        return f"{self.name} ({given})" if given else self.name


@frozen
class Lineage:
    """What a remix is made of: a base by name and content hash (None where it does not say which state of the
    base it means), and modifiers in the order in which they are applied."""

    base_name: str
    base_content: str | None
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
    licences = [line.sentence.identifier for line in lines if isinstance(line.sentence, Licence)]
    return Item(
        kind_of(sheet),
        sheet.title,
        format_game(sheet) if game else format_plain(sheet),  # type: ignore[arg-type]
        content,
        " ".join(_told(lines, "about")),
        _told(lines, "credit"),
        licences[0] if licences else None,
        lineage_of(sheet) if isinstance(sheet, RemixSheet) else None,
        tuple(dict.fromkeys(each for each in history if each != content)),
    )


def lineage_of(sheet: RemixSheet) -> Lineage | None:
    """What a remix says that it is made of, or None where it names no base."""
    sentences = [line.sentence for line in sheet.lines]
    base = next((each for each in sentences if isinstance(each, said.BasedOn)), None)
    uses = tuple(
        Used(each.modifier, tuple((setting.parameter, setting.value.words()) for setting in each.settings))
        for each in sentences
        if isinstance(each, said.Use)
    )
    return Lineage(base.base, base.content, uses) if base else None


def _told(lines: tuple[Line, ...], topic: str) -> tuple[str, ...]:
    told = (line.sentence for line in lines if isinstance(line.sentence, Told))
    return tuple(each.text for each in told if each.topic == topic)
