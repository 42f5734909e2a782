"""A line under a wrong heading is read where it belongs."""

from __future__ import annotations

from pathlib import Path

import pytest
from lark import UnexpectedInput

from grammar.language import parse_sentence
from grammar.parse import parse
from grammar.tree import GameSheet
from library import game_paths

HEADINGS = ("set-up", "play", "when", "finish")


def _is_sentence_of(section: str, text: str) -> bool:
    try:
        return bool(parse_sentence(section, text))
    except UnexpectedInput:
        return False


def _lines(sheet: GameSheet) -> set[tuple[str, str]]:
    return {(section.name, line.sentence.words()) for section in sheet.sections for line in section.lines}


@pytest.mark.sample(6)
@pytest.mark.parametrize("path", game_paths(), ids=lambda path: path.stem)
def test_a_line_under_another_heading_is_read_where_it_belongs(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    rules = parse(text).value
    assert rules is not None
    meant, rows = _lines(rules.games[0]), text.splitlines()
    for section in rules.games[0].sections:
        for line in section.lines if section.name in HEADINGS else ():
            if section.name == "finish" and _is_sentence_of("when", line.sentence.words()):
                continue  # by the clock somebody wins: that stands under either
            for other in {*HEADINGS, *(("space",) if section.name != "set-up" else ())} & {*rows} - {section.name}:
                others = [row for number, row in enumerate(rows, start=1) if number != line.span.line]
                others.insert(others.index(other) + 1, rows[line.span.line - 1])
                read = parse("\n".join(others))
                if any("`when` or `finish`" in finding.hint for finding in read.findings):
                    continue  # a line of the clock that would do under either is asked about
                moved = read.value
                assert moved is not None, (line.sentence.words(), other)
                assert _lines(moved.games[0]) == meant, (line.sentence.words(), other)
