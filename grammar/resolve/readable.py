"""The game of those lines of a text that have no mistake, so that it can be said what was understood of them."""

from __future__ import annotations

import re
from collections.abc import Mapping

from grammar.finding import Finding, Severity
from grammar.frozen import frozen
from grammar.game import Game
from grammar.mistakes.proofread import mistakes
from grammar.parse import read
from grammar.resolve.from_tree import game_of_what_stands

_MOST_PASSES = 6  # lines that speak of what a line with a mistake declares have one themselves without it


@frozen
class Readable:
    """A game without the lines that are left out, by their numbers."""

    game: Game
    left_out: tuple[int, ...]


def readable(text: str, file: str, catalogue: Mapping[str, str]) -> Readable | None:
    """What can be read of the only game of a text; None where too little is left of it.

    A line is left out whole, and what no other line says is then taken for granted or missing.
    """
    lines, left_out = re.split(r"\r\n|\r|\n", text), set[int]()
    for _ in range(_MOST_PASSES):
        reading = read("\n".join(lines), file)
        wrong = [each for each in mistakes(reading, catalogue) if each.severity is Severity.ERROR]
        if len(reading.rules.games) != 1 or any(not _can_be_left_out(each, lines) for each in wrong):
            return None
        numbers = {each.place.line for each in wrong if each.code != "G-missing"}
        if not numbers:
            game = game_of_what_stands(reading.rules.games[0], catalogue)
            return Readable(game, tuple(sorted(left_out))) if game.sides and game.court_m[0] else None
        left_out |= numbers
        lines = ["" if number in numbers else line for number, line in enumerate(lines, start=1)]
    return None


def _can_be_left_out(mistake: Finding, lines: list[str]) -> bool:
    """Whether a mistake is of one line below a heading, or of what is not there without such a line."""
    if mistake.code == "G-missing":
        return True
    return 0 < mistake.place.line <= len(lines) and lines[mistake.place.line - 1][:1].isspace()
