"""The reference page of the language: every example is read, and says itself in just those words."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import grammar
from grammar.language import SHEETS
from grammar.layout import KINDS, SECTIONS
from grammar.parse import parse, parse_line

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


def test_whole_sheets_of_the_page_are_read() -> None:
    sheets = re.findall(r"```text\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)
    assert sheets
    for text in sheets:
        outcome = parse(text)
        assert outcome.value is not None, outcome.findings


def test_page_says_how_each_kind_of_sheet_begins() -> None:
    for kind in KINDS:
        name = re.search(rf"`({kind} \w[\w ]+)`", PAGE.read_text(encoding="utf-8"))
        assert name is not None, kind
        assert not [each for each in parse(f"{name[1]}\n  {_BODY[kind]}\n").findings if each.place.line == 1]


_BODY = {
    "game": "ages 8 to 12",
    "modifier": "heading task",
    "remix": 'based on "Lantern Row"',
    "class": "class of 27",
    "hall": "the hall is 15 m by 12 m",
}
