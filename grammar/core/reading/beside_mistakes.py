"""What a sheet of which sides or court are not known says that means nothing, each line by itself."""

from __future__ import annotations

from grammar.core.reading.set_up.space_and_sides import read_sides
from grammar.core.reading.sheet.sheet_pass import numbered
from grammar.finding import Finding
from grammar.game import Game
from grammar.sentences.sides import Sides


def senseless_lines(game: Game) -> tuple[Finding, ...]:
    """The lines that mean nothing whatever others say."""
    reading = numbered(game)
    for sentence, line in reading.sentences:
        if isinstance(sentence, Sides):
            reading.add(sentence, line, read_sides)  # what it says hangs on no other line
        else:
            reading.add(sentence, line, lambda *_: ())
    return tuple(reading.findings)
