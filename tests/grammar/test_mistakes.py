"""Every broken file is told apart, and its message is pinned beside it (NAME.rules, NAME.txt).

After a change of wording: `pytest tests/grammar/test_mistakes.py --reset`, then read the difference.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from grammar.finding import Severity
from grammar.language import STARTS
from grammar.layout import SECTIONS
from grammar.parse import parse_line
from tests.grammar.corpus import FILES, expected_number, message, mistakes

every_file = pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)


@every_file
def test_message_is_the_pinned_one(path: Path, pinned: Callable[[str, Path], None]) -> None:
    pinned(message(mistakes(path), path), path.with_suffix(".txt"))


@every_file
def test_every_mistake_is_found_and_no_other(path: Path) -> None:
    findings = [finding for finding in mistakes(path) if finding.severity is Severity.ERROR]
    assert len(findings) == expected_number(path), [finding.title for finding in findings]


@every_file
def test_message_says_where_and_what_instead(path: Path) -> None:
    for finding in mistakes(path):
        assert finding.place.line >= 1 or finding.code == "L-not-text"
        assert finding.hint, finding.title
        assert finding.title.endswith((".", "?")), finding.title
        for text in (finding.title, finding.hint):
            assert not re.search(r"__ANON|\bNone\b|Token|\$END|  ", text), text


@every_file
def test_line_offered_instead_is_a_sentence(path: Path) -> None:
    for finding in mistakes(path):
        offered = re.search(r"(?:^Write|and write|or write): (.+)$", finding.hint)
        if not offered or offered.group(1).startswith(("note:", "game ", "modifier ")) or offered.group(1) in SECTIONS:
            continue
        line = offered.group(1)
        if not line.startswith("takes"):
            line = re.sub(r"\bn\b", "1", line)
        assert any(not parse_line(section, line).findings for section in STARTS), line


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_frame_keeps_to_80_columns(path: Path) -> None:
    for line in message(mistakes(path), path).splitlines():
        assert len(line) <= 80, line


def test_there_are_enough() -> None:
    assert len(FILES) >= 120
