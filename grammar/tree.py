"""The tree of a file: what it says, sentence by sentence. It promises syntax only, no meaning."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar

from grammar.frozen import field, frozen
from grammar.sentences.base import Node
from grammar.span import Span

Sentence = TypeVar("Sentence", bound=Node)


@frozen
class Line:
    """A sentence with the notes above it. `block` holds the indented lines of a modifier's block."""

    sentence: Node
    notes: tuple[str, ...] = field(default=(), eq=False)
    block: tuple[Line, ...] = ()

    @property
    def span(self) -> Span:
        return self.sentence.span


@frozen
class Section:
    """One section of a game with the notes above its heading."""

    name: str
    lines: tuple[Line, ...]
    notes: tuple[str, ...] = field(default=(), eq=False)


@frozen
class GameSheet:
    """A game as written. Sections of one name are joined; they stand in the canonical order."""

    title: str
    head: tuple[Line, ...]
    sections: tuple[Section, ...]
    span: Span = field(eq=False)
    notes: tuple[str, ...] = field(default=(), eq=False)
    closing_notes: tuple[str, ...] = field(default=(), eq=False)

    def lines(self, section: str) -> tuple[Line, ...]:
        """The lines of a section; "head" is one, too."""
        if section == "head":
            return self.head
        return next((part.lines for part in self.sections if part.name == section), ())

    def all_of(self, section: str, kind: type[Sentence]) -> Iterator[Sentence]:
        """The sentences of one kind in a section, in the order of the sheet."""
        return (line.sentence for line in self.lines(section) if isinstance(line.sentence, kind))


@frozen
class PlainSheet:
    """A sheet without sections."""

    title: str
    lines: tuple[Line, ...]
    span: Span = field(eq=False)
    notes: tuple[str, ...] = field(default=(), eq=False)
    closing_notes: tuple[str, ...] = field(default=(), eq=False)


@frozen
class ModifierSheet(PlainSheet):
    """A modifier as written."""


@frozen
class RemixSheet(PlainSheet):
    """A remix as written: what it is based on, the modifiers in order, and its own edits."""


@frozen
class ClassSheet(PlainSheet):
    """A class as written: pupils, hall, time and what lies in the cupboard."""


@frozen
class HallSheet(PlainSheet):
    """A hall as written: its size, its doors, what stands fixed in it, and the lines on its floor."""


@frozen
class RuleFile:
    """All that one file holds."""

    file: str
    games: tuple[GameSheet, ...]
    modifiers: tuple[ModifierSheet, ...]
    remixes: tuple[RemixSheet, ...] = ()
    classes: tuple[ClassSheet, ...] = ()
    halls: tuple[HallSheet, ...] = ()
