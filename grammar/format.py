"""Tree → canonical text: one order of sections, one wording of each sentence, all notes kept."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.tree import GameSheet, Line, PlainSheet, RuleFile

STEP = "  "


def format_file(rules: RuleFile) -> str:
    """The canonical text of all that a file holds; reading it gives the same tree."""
    sheets = [format_game(game) for game in rules.games]
    plain = (*rules.modifiers, *rules.remixes, *rules.classes, *rules.halls)
    return "\n".join([*sheets, *(format_plain(sheet) for sheet in plain)])


def format_game(game: GameSheet) -> str:
    """The canonical text of a game."""
    lines = [*_notes(game.notes, 0), f"game {game.title}", *_lines(game.head, 1)]
    for section in game.sections:
        lines += ["", *_notes(section.notes, 0), section.name, *_lines(section.lines, 1)]
    return _text(lines, game.closing_notes)


def format_plain(sheet: PlainSheet) -> str:
    """The canonical text of a sheet without sections: a modifier, a remix, a class or a hall."""
    kind = type(sheet).__name__.removesuffix("Sheet").lower()
    lines = [*_notes(sheet.notes, 0), f"{kind} {sheet.title}", *_lines(sheet.lines, 1)]
    return _text(lines, sheet.closing_notes)


def _text(lines: list[str], closing_notes: tuple[str, ...]) -> str:
    closing = ["", *_notes(closing_notes, 0)] if closing_notes else []
    return "\n".join([*lines, *closing]) + "\n"


def _notes(notes: tuple[str, ...], depth: int) -> Iterator[str]:
    for note in notes:
        yield f"{STEP * depth}note: {note}".rstrip()


def _lines(lines: tuple[Line, ...], depth: int) -> Iterator[str]:
    for line in lines:
        yield from _notes(line.notes, depth)
        yield STEP * depth + line.sentence.words()
        yield from _lines(line.block, depth + 1)
