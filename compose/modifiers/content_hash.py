"""What a sheet says, as one number: two sheets of one content hash say the same, whatever their notes."""

from __future__ import annotations

import hashlib
from typing import TypeVar

import attrs

from grammar.format import format_game, format_plain
from grammar.tree import GameSheet, Line, PlainSheet

Sheet = TypeVar("Sheet", GameSheet, PlainSheet)


def content_hash(sheet: GameSheet | PlainSheet) -> str:
    """SHA-256, in 64 small hexadecimal digits, over the canonical text in UTF-8 without its notes."""
    return hashlib.sha256(plain_text(sheet).encode()).hexdigest()


def plain_text(sheet: GameSheet | PlainSheet) -> str:
    """The canonical text without its notes."""
    return format_game(without_notes(sheet)) if isinstance(sheet, GameSheet) else format_plain(without_notes(sheet))


def without_notes(sheet: Sheet) -> Sheet:
    """The sheet with every note left out; sentences stay as they are."""
    if isinstance(sheet, GameSheet):
        sections = tuple(attrs.evolve(each, notes=(), lines=_bare(each.lines)) for each in sheet.sections)
        return attrs.evolve(sheet, notes=(), closing_notes=(), head=_bare(sheet.head), sections=sections)
    return attrs.evolve(sheet, notes=(), closing_notes=(), lines=_bare(sheet.lines))


def _bare(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    return tuple(attrs.evolve(line, notes=(), block=_bare(line.block)) for line in lines)
