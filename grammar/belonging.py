"""What each line of a game says, and under which heading it belongs where it stands under another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

import attrs

from grammar.finding import Finding
from grammar.heard.narrowed import narrowed
from grammar.line_reading import LineReader
from grammar.lines import TextLine
from grammar.sentences.base import Node

MOST_SHEET_LINES = 400
MOST_KEPT = 4_096
Values = tuple[tuple[str, str], ...]
_Headed = tuple[str, TextLine, tuple[TextLine, ...]]


def where_they_belong(reader: LineReader, sections: Sequence[_Headed]) -> Iterator[_Headed]:
    """The sections; a line that is a sentence of one other section alone stands at the end of that, and what a line of
    when says of hits or catches that do not count stands under play."""
    told = [(name, line) for name, _, body in sections if name for line in body][:MOST_SHEET_LINES]
    moved = {line: belongs for name, line in told if (belongs := _section_of(reader, name, line)) != name}
    apart = {line: found for name, line in told if name == "when" and (found := _narrowed(reader, line)) is not None}
    for name, heading, body in sections:
        kept = (apart[line][0] if line in apart else line for line in body if line not in moved or line in apart)
        yield name, heading, tuple(kept)
    for line, belongs in moved.items():
        if line not in apart:
            yield belongs, TextLine(line.number, 0, belongs), (line,)
    said = {each.words() for name, line in told if name == "play" for each in sentences_of(reader, name, line, ())[0]}
    rules = {rule.text: rule for _, every in apart.values() for rule in every if rule.text not in said}
    if rules:
        yield "play", TextLine(1, 0, "play"), tuple(rules.values())


def _narrowed(reader: LineReader, line: TextLine) -> tuple[TextLine, tuple[TextLine, ...]] | None:
    """A line of when without what narrows its event, and that as lines of play; None where nothing does."""
    text, rules = narrowed(line.text)
    plain = attrs.evolve(line, text=text)
    if not rules or not sentences_of(reader, "when", plain, ())[0]:
        return None
    return plain, tuple(attrs.evolve(line, text=rule, notes=()) for rule in rules)


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
