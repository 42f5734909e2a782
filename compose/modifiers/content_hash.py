"""What a sheet says, as one number: two sheets of one content hash say the same, whatever their notes."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from typing import TypeVar

import attrs

from grammar.format import format_game, format_plain
from grammar.own_names import is_plain
from grammar.sentences.base import Name, Node
from grammar.tree import GameSheet, Line, PlainSheet

Sheet = TypeVar("Sheet", GameSheet, PlainSheet)


def content_hash(sheet: GameSheet | PlainSheet) -> str:
    """SHA-256, in 64 small hexadecimal digits, over the canonical text in UTF-8 without its notes."""
    return hashlib.sha256(plain_text(sheet).encode()).hexdigest()


def plain_text(sheet: GameSheet | PlainSheet) -> str:
    """The canonical text without its notes, and without the quotes of names.

    Which names stand in quotes grows with the language, and what was kept before must have the hash that it had.
    """
    text = format_game(without_notes(sheet)) if isinstance(sheet, GameSheet) else format_plain(without_notes(sheet))
    for name in _odd_names(sheet):
        text = text.replace(f'"{name}"', name)
    return text.replace("whoever waits on ", "whoever waits in ")  # of benches, too, it once was "in"


def _odd_names(sheet: GameSheet | PlainSheet) -> set[str]:
    """The names of a sheet that hold words of the language."""
    lines = [*sheet.head, *(line for part in sheet.sections for line in part.lines)] if isinstance(
        sheet, GameSheet) else [*sheet.lines, *(inner for line in sheet.lines for inner in line.block)]  # fmt: skip
    return {name for line in lines for name in _names_in(line.sentence) if not is_plain(name)}


def _names_in(value: object) -> Iterator[str]:
    if isinstance(value, Name):
        yield value.text
    elif isinstance(value, tuple):
        for each in value:
            yield from _names_in(each)
    elif isinstance(value, Node):
        for field in attrs.fields(type(value)):
            yield from _names_in(getattr(value, field.name))


def without_notes(sheet: Sheet) -> Sheet:
    """The sheet with every note left out; sentences stay as they are."""
    if isinstance(sheet, GameSheet):
        sections = tuple(attrs.evolve(each, notes=(), lines=_bare(each.lines)) for each in sheet.sections)
        return attrs.evolve(sheet, notes=(), closing_notes=(), head=_bare(sheet.head), sections=sections)
    return attrs.evolve(sheet, notes=(), closing_notes=(), lines=_bare(sheet.lines))


def _bare(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    return tuple(attrs.evolve(line, notes=(), block=_bare(line.block)) for line in lines)
