"""What a sheet with other mistakes says that means nothing: its mistakes are told at once."""

from __future__ import annotations

from fractions import Fraction

from grammar.core.declared import Court, Cut
from grammar.core.reading.from_game import declared
from grammar.core.reading.reader import Reader
from grammar.core.reading.sheet_pass import Reading
from grammar.finding import Finding
from grammar.game import Game


def senseless_lines(game: Game, alone: bool) -> tuple[Finding, ...]:
    """The lines that mean nothing, `alone`: each by itself, for others that it needs may be missing."""
    if not alone:
        return tuple(declared(game).findings)
    reading = Reading(Reader(game, Court(Fraction(0), Fraction(0), Cut.WHOLE)))
    reading.number(game.sheet)
    for sentence, line in reading.sentences:
        reading.add(sentence, line, lambda *_: ())
    return tuple(reading.findings)
