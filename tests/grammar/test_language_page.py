"""The reference page of the language: every example is read, and says itself in just those words."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import grammar
from grammar.language import SHEETS
from grammar.layout import SECTIONS
from grammar.parse import parse_line

PAGE = Path(grammar.__file__ or "").with_name("LANGUAGE.md")


def examples() -> Iterator[tuple[str, str]]:
    """Section and line of each example of the page."""
    section = ""
    for line in PAGE.read_text(encoding="utf-8").splitlines():
        heading = re.fullmatch(r"## ([\w-]+)", line)
        example = re.fullmatch(r"\| .+ \| `(.+)` \|", line)
        if heading:
            section = heading.group(1)
        elif example:
            yield section, example.group(1)


@pytest.mark.parametrize(("section", "line"), list(examples()))
def test_example_reads_back_as_written(section: str, line: str) -> None:
    outcome = parse_line(section, line)
    assert not outcome.findings, outcome.findings[0].title
    assert outcome.value is not None
    assert outcome.value.words() == line


def test_page_has_every_section() -> None:
    assert {section for section, _ in examples()} == {"head", *SECTIONS, *SHEETS}
