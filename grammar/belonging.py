"""What each line of a game says, and under which heading it belongs where it stands under another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from grammar.finding import Finding
from grammar.line_reading import LineReader
from grammar.lines import TextLine
from grammar.sentences.base import Node

MOST_SHEET_LINES = 400
MOST_KEPT = 4_096
Values = tuple[tuple[str, str], ...]
_Headed = tuple[str, TextLine, tuple[TextLine, ...]]


def where_they_belong(reader: LineReader, sections: Sequence[_Headed]) -> Iterator[_Headed]:
    """The sections; a line that is a sentence of one other section alone stands at the end of that."""
    told = [(name, line) for name, _, body in sections if name for line in body][:MOST_SHEET_LINES]
    moved = {line: belongs for name, line in told if (belongs := _section_of(reader, name, line)) != name}
    for name, heading, body in sections:
        yield name, heading, tuple(line for line in body if line not in moved)
    for line, belongs in moved.items():
        yield belongs, TextLine(line.number, 0, belongs), (line,)


@lru_cache(maxsize=MOST_KEPT)
def sentences_of(
    reader: LineReader, section: str, line: TextLine, values: Values
) -> tuple[tuple[Node, ...], Finding | None]:
    """As the reader has them; kept, for a sheet is read again for every line that may mend it, and by whoever writes
    for every letter typed."""
    sentences, mistake = reader.sentences(section, line, dict(values))
    return tuple(sentences), mistake


@lru_cache(maxsize=MOST_KEPT)
def _section_of(reader: LineReader, section: str, line: TextLine) -> str:
    return section if sentences_of(reader, section, line, ())[0] else reader.section_of(section, line)
