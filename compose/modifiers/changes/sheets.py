"""Lines of a sheet put in, taken out and changed; every change is kept as an edit."""

from __future__ import annotations

from collections.abc import Callable

import attrs
from attrs import define, field

from compose.modifiers.edit import Edit
from grammar.layout import SECTIONS
from grammar.said import Said
from grammar.sentences.base import Node
from grammar.span import Changed, Span
from grammar.topics import topic
from grammar.tree import GameSheet, Line, Section

Problem = Said


@define
class Draft:
    """A sheet while one modifier works on it."""

    sheet: GameSheet
    by: str
    edits: list[Edit] = field(factory=list)

    def lines(self, section: str) -> tuple[Line, ...]:
        """The lines of a section as they stand now."""
        return self.sheet.lines(section)

    def put(self, section: str, line: Line, why: Span) -> None:
        """Add a line, unless the same words stand there already."""
        if any(each.sentence.words() == line.sentence.words() for each in self.lines(section)):
            return
        self._set(section, (*self.lines(section), attrs.evolve(line, notes=())))
        self.edits.append(Edit(section, "", line.sentence.words(), self.by, topic(line.sentence), why))

    def take(self, section: str, goes: Callable[[Node], bool], why: Span) -> int:
        """Take out the lines that `goes` names; how many went."""
        kept = tuple(line for line in self.lines(section) if not goes(line.sentence))
        for line in self.lines(section):
            if goes(line.sentence):
                self.edits.append(Edit(section, line.sentence.words(), "", self.by, topic(line.sentence), why))
        gone = len(self.lines(section)) - len(kept)
        self._set(section, kept)
        return gone

    def change(self, section: str, into: Callable[[Node], Node], why: Span) -> int:
        """Change every line of a section for which `into` gives another sentence; how many changed."""
        changed = 0
        lines = []
        for line in self.lines(section):
            sentence = into(line.sentence)
            if sentence != line.sentence:
                changed += 1
                before = line.sentence.words()
                self.edits.append(Edit(section, before, sentence.words(), self.by, topic(line.sentence), why))
                sentence = _marked(sentence, line.span, why)
            lines.append(attrs.evolve(line, sentence=sentence))
        self._set(section, tuple(lines))
        return changed

    def replace(self, section: str, old: Callable[[Node], bool], line: Line, why: Span) -> None:
        """Put a line in the place of the first that `old` names; the others go; without any it is added."""
        standing = [each for each in self.lines(section) if old(each.sentence)]
        if not standing:
            self.put(section, line, why)
            return
        first = standing[0].sentence
        self.take(section, lambda sentence: old(sentence) and sentence is not first, why)
        self.change(section, lambda sentence: line.sentence if sentence is first else sentence, why)

    def put_in_place(self, section: str, old: Node, new: tuple[Node, ...], why: Span) -> None:
        """Put sentences in the place of one."""
        lines: list[Line] = []
        for line in self.lines(section):
            made = [attrs.evolve(line, sentence=_marked(each, old.span, why)) for each in new]
            lines.extend(made if line.sentence is old else [line])
        for number, sentence in enumerate(new):
            before = "" if number else old.words()
            self.edits.append(Edit(section, before, sentence.words(), self.by, topic(sentence), why))
        self._set(section, tuple(lines))

    def _set(self, section: str, lines: tuple[Line, ...]) -> None:
        if section == "head":
            self.sheet = attrs.evolve(self.sheet, head=lines)
            return
        by_name = {part.name: part for part in self.sheet.sections}
        by_name[section] = attrs.evolve(by_name.get(section, Section(section, ())), lines=lines)
        parts = tuple(by_name[name] for name in SECTIONS if name in by_name and by_name[name].lines)
        self.sheet = attrs.evolve(self.sheet, sections=parts)


def _marked(sentence: Node, place: Span, why: Span) -> Node:
    """A sentence made of one that stands at a place; one that the modifier itself says stands where it says it."""
    if sentence.span.line and sentence.span != place:
        return sentence
    return attrs.evolve(sentence, span=attrs.evolve(place, changed=Changed(sentence.words(), why)))
