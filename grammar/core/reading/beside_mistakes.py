"""What a sheet with other mistakes says that means nothing: its mistakes are told at once."""

from __future__ import annotations

from grammar.core.reading.from_game import declared
from grammar.core.reading.sheet_pass import numbered
from grammar.finding import Finding
from grammar.game import Game


def senseless_lines(game: Game, alone: bool) -> tuple[Finding, ...]:
    """The lines that mean nothing, `alone`: each by itself, for others that it needs may be missing."""
    if not alone:
        return tuple(declared(game).findings)
    reading = numbered(game)
    for sentence, line in reading.sentences:
        reading.add(sentence, line, lambda *_: ())
    return tuple(reading.findings)
