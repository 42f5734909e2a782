"""Two schools changed the same game: one game again, and what they do not agree on as sentences to choose from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import Enum

import attrs

from compose.share.bounds import read_rules
from compose.share.making import library_contents
from compose.share.merge.lines import Slot, merged_lines, merged_notes, said
from compose.share.pack.item import Item, Sheet
from compose.share.shelf.files import read_stored
from compose.share.shelf.shelf import Shelf
from compose.share.told import outcome_of
from grammar.finding import Outcome
from grammar.frozen import frozen
from grammar.layout import SECTIONS
from grammar.tree import GameSheet, Line, Section


class Side(Enum):
    """Whose line to take."""

    OURS = "ours"
    THEIRS = "theirs"
    BASE = "base"


@frozen
class Conflict:
    """What the two do not agree on; "" stands for no line. `number` counts from 1."""

    number: int
    section: str
    base: str
    ours: str
    theirs: str

    def words(self) -> str:
        """The conflict in one or two sentences."""
        where = f" under {self.section}" if self.section else ""
        if not self.base:
            return f"Both added a line{where} about the same thing. Ours: {self.ours}. Theirs: {self.theirs}."
        if not self.ours:
            return f"Ours took a line away{where} that theirs changed. It was: {self.base}. Theirs: {self.theirs}."
        if not self.theirs:
            return f"Theirs took a line away{where} that ours changed. It was: {self.base}. Ours: {self.ours}."
        return f"Both changed a line{where}. It was: {self.base}. Ours: {self.ours}. Theirs: {self.theirs}."


@frozen
class Merge:
    """The merged sheet, with ours standing where nothing was chosen; every conflict, in order; what is open."""

    sheet: Sheet
    conflicts: tuple[Conflict, ...]
    open: tuple[Conflict, ...]


def merge(base: Sheet, ours: Sheet, theirs: Sheet, choices: Mapping[int, Side], otherwise: Side | None = None) -> Merge:
    """The merge of two sheets that came from one. Conflicts are numbered in the order of the sheet;
    `choices` settles them by number, `otherwise` settles the rest. The title stays ours."""
    settling = _Settling(choices, otherwise)
    if isinstance(ours, GameSheet):
        sheet: Sheet = _game(base, ours, theirs, settling)
    else:
        slots = merged_lines(_lines(base, ""), ours.lines, _lines(theirs, ""))
        sheet = attrs.evolve(ours, lines=settling.lines("", slots))
    notes, closing = (
        merged_notes(getattr(base, part), getattr(ours, part), getattr(theirs, part))
        for part in ("notes", "closing_notes")
    )
    whole = attrs.evolve(sheet, notes=notes, closing_notes=closing)
    return Merge(whole, tuple(settling.conflicts), tuple(settling.open))


def _game(base: Sheet, ours: GameSheet, theirs: Sheet, settling: _Settling) -> GameSheet:
    def merged(section: str) -> tuple[Line, ...]:
        slots = merged_lines(_lines(base, section), ours.lines(section), _lines(theirs, section))
        return settling.lines(section, slots)

    head = merged("head")
    parts = ((name, merged(name)) for name in SECTIONS)
    sections = tuple(Section(name, lines, _notes(name, base, ours, theirs)) for name, lines in parts if lines)
    return attrs.evolve(ours, head=head, sections=sections)


def _lines(sheet: Sheet, section: str) -> tuple[Line, ...]:
    """The lines of a game's section; "" is all of a sheet without sections."""
    return sheet.lines(section) if isinstance(sheet, GameSheet) else sheet.lines


def _notes(section: str, *sheets: Sheet) -> tuple[str, ...]:
    base, ours, theirs = (_notes_of(sheet, section) for sheet in sheets)
    return merged_notes(base, ours, theirs)


def _notes_of(sheet: Sheet, section: str) -> tuple[str, ...]:
    parts = sheet.sections if isinstance(sheet, GameSheet) else ()
    return next((part.notes for part in parts if part.name == section), ())


class _Settling:
    """Numbers the conflicts as they come, and settles those for which somebody chose."""

    def __init__(self, choices: Mapping[int, Side], otherwise: Side | None) -> None:
        self._choices, self._otherwise = choices, otherwise
        self.conflicts: list[Conflict] = []
        self.open: list[Conflict] = []

    def lines(self, section: str, slots: tuple[Slot, ...]) -> tuple[Line, ...]:
        """The lines of a section; where nothing was chosen, ours."""
        return tuple(line for line in self._settled(section, slots) if line is not None)

    def _settled(self, section: str, slots: tuple[Slot, ...]) -> Iterator[Line | None]:
        for slot in slots:
            if slot.clear:
                yield slot.line
                continue
            number = len(self.conflicts) + 1
            conflict = Conflict(number, section, said(slot.base), said(slot.ours), said(slot.theirs))
            self.conflicts.append(conflict)
            chosen = self._choices.get(number, self._otherwise)
            if chosen is None:
                self.open.append(conflict)
            yield {Side.THEIRS: slot.theirs, Side.BASE: slot.base}.get(chosen or Side.OURS, slot.ours)


def common_base(shelf: Shelf, ours: Item, theirs: Item) -> Outcome[Sheet]:
    """The last state that both came from, as far as the shelf or the library still has it; else ours, where it was
    taken from somebody and is as it came, so that nothing of one's own is lost to theirs.

    No value and no finding where none is known.
    """
    mine = {*ours.history, ours.content}
    shared = [content for content in reversed((*theirs.history, theirs.content)) if content in mine]
    library = library_contents() if shared else {}
    for content in shared:
        if content in library:
            return Outcome(library[content])
        past = shelf.past(content)
        if past.value:
            data = past.value
            return outcome_of(shelf.folder, lambda data=data: read_rules(data, "the state before"))  # type: ignore[misc]
    came = outcome_of(shelf.folder, lambda: _as_it_came(shelf, ours))
    return Outcome(came.value, came.findings)


def _as_it_came(shelf: Shelf, ours: Item) -> Sheet | None:
    """Our sheet where it came in a pack and never was otherwise."""
    there = shelf.of_key(ours)
    if there is None or there[1] != ours.content:
        return None
    stored, sheet = read_stored(shelf.folder, there[0])
    return sheet if stored.origin is not None and not stored.item.history else None


def blank(sheet: Sheet) -> Sheet:
    """A base that says nothing, for two sheets of which no common state is known."""
    if isinstance(sheet, GameSheet):
        return attrs.evolve(sheet, head=(), sections=(), notes=(), closing_notes=())
    return attrs.evolve(sheet, lines=(), notes=(), closing_notes=())
