"""A sheet without a name is told so once, and nothing that is said of it puts an empty name in quotes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from corpus import FILES, mistakes
from proofreading import judge_of

from compose.modifiers.recipe import recipe_of
from compose.telling.findings import finding_said
from compose.telling.wording import Wording, wording_of
from grammar.finding import Finding
from grammar.parse import read
from library import class_paths, game_paths, modifier_paths, remix_paths

SHEETS = (*game_paths(), *modifier_paths(), *class_paths(), *remix_paths())
HEADING = re.compile(r"(?m)^(game|modifier|class|hall|remix) .+$")
EMPTY = re.compile("``|\"\"|« ?»")
LANGUAGES = ("en", "fr")


def said_of(found: tuple[Finding, ...], wording: Wording) -> Iterator[str]:
    for each in found:
        told = finding_said(each, wording)
        yield from (told.title, told.hint)


def bare(text: str) -> Iterator[str]:
    """The sheet without its name; and then without any of its other lines."""
    nameless = HEADING.sub(lambda heading: heading.group(1), text, count=1)
    yield nameless
    yield "\n".join(line for line in nameless.split("\n") if line[:1].isalpha() and not line.startswith("note:"))


@pytest.mark.sample(20)
@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_no_empty_name_is_told(path: Path) -> None:
    for text in bare(path.read_text(encoding="utf-8")):
        found = [*judge_of("nameless.rules")(text)]
        assert [each.code for each in found].count("L-name") == 1
        for remix in read(text).rules.remixes:
            found += recipe_of(remix, {}).findings
        for language in LANGUAGES:
            assert not [each for each in said_of(tuple(found), wording_of(language)) if EMPTY.search(each)]


@pytest.mark.sample(40)
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_empty_name_is_told_of_a_broken_file(path: Path) -> None:
    for language in LANGUAGES:
        told = said_of(mistakes(path), wording_of(language))
        assert not [each for each in told if EMPTY.search(each)]
