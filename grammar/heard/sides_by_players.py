"""A side that is named in the singular, such as "wolf", and spoken of by its players: it is called "wolves"."""

from __future__ import annotations

import re
from collections.abc import Mapping

import attrs

from grammar.layout import Part
from grammar.sentences.base import Name, Node
from grammar.sentences.sides import Sides
from grammar.sentences.space import Track
from grammar.tree import GameSheet, Line
from grammar.words import plural, singulars


def with_sides_by_players(sheet: GameSheet, part: Part) -> GameSheet:
    """The sheet with the names of such sides in the plural, where they are declared."""
    names = [name.text for sides in sheet.all_of("sides", Sides) for name in sides.names]
    text = "\n".join(line.text for _, _, lines in part.sections for line in lines)
    many = {name: plural(name) for name in names if not singulars(name) and _spoken_of(plural(name), text)}
    if not many:
        return sheet
    sections = tuple(attrs.evolve(each, lines=_renamed(each.lines, many)) for each in sheet.sections)
    return attrs.evolve(sheet, sections=sections)


def _spoken_of(name: str, text: str) -> bool:
    return re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", text, re.IGNORECASE) is not None


def _renamed(lines: tuple[Line, ...], many: Mapping[str, str]) -> tuple[Line, ...]:
    return tuple(attrs.evolve(line, sentence=_with_names(line.sentence, many)) for line in lines)


def _with_names(sentence: Node, many: Mapping[str, str]) -> Node:
    def name(said: Name) -> Name:
        return attrs.evolve(said, text=many.get(said.text, said.text))

    match sentence:
        case Sides():
            return attrs.evolve(sentence, names=tuple(name(each) for each in sentence.names))
        case Track():
            return attrs.evolve(sentence, start=name(sentence.start), goal=name(sentence.goal))
    return sentence
