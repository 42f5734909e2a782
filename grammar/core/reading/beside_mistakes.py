"""What a sheet of which sides or court are not known says that means nothing, each line by itself."""

from __future__ import annotations

from grammar.core.reading.sheet_pass import numbered
from grammar.finding import Finding
from grammar.game import Game


def senseless_lines(game: Game) -> tuple[Finding, ...]:
    """The lines that mean nothing whatever others say."""
    reading = numbered(game)
    for sentence, line in reading.sentences:
        reading.add(sentence, line, lambda *_: ())
    return tuple(reading.findings)
