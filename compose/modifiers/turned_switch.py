"""A sheet with one of its switches turned over."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.frozen import evolve, frozen
from grammar.layout import SECTIONS
from grammar.sentences.head import Switch, Switched
from grammar.span import Span
from grammar.tree import GameSheet


@frozen
class Turned:
    """The sheet with a switch turned over: its name, whether it is `on` now, its line as it is now, where it stands."""

    name: str
    on: bool
    line: str
    place: Span
    sheet: GameSheet


def lines_of_switches(sheet: GameSheet) -> frozenset[int]:
    """The numbers of the lines of a file that hang on a switch."""
    spans = (said.span for section in SECTIONS for said in sheet.all_of(section, Switched))
    return frozenset(span.line for span in spans)


def each_turned(sheet: GameSheet) -> Iterator[Turned]:
    """The sheet once for each of its switches, with that one turned over and the others as they are."""
    for number, line in enumerate(sheet.head):
        switch = line.sentence
        if isinstance(switch, Switch):
            other = evolve(switch, usually="usually off" if switch.on else "usually on")
            head = (*sheet.head[:number], evolve(line, sentence=other), *sheet.head[number + 1 :])
            yield Turned(switch.name.words(), other.on, other.words(), switch.span, evolve(sheet, head=head))
