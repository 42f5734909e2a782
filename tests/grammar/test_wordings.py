"""What people write instead of the language's wording: each wording of the table helps at least one line."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from grammar.heard.rewrite import choices, rewrites, rewritten
from grammar.heard.turns import TURNS
from grammar.meanings import Meaning
from grammar.mistakes import wordings
from grammar.mistakes.mended import mended
from grammar.mistakes.wordings import WORDINGS
from grammar.parse import parse_line, read
from grammar.resolve import resolve
from grammar.resolve.reworded import reworded
from library import game_paths, kit_categories

HERON = next(path for path in game_paths() if path.stem == "heron-and-pike")


def lines_of(file: str) -> list[tuple[str, ...]]:
    """Section, what somebody wrote, and what it should be."""
    text = Path(__file__).with_name(file).read_text(encoding="utf-8")
    return [tuple(part.strip() for part in line.split("|")) for line in text.splitlines()]


LINES = lines_of("wordings.txt")
NAMES = lines_of("other_names.txt")


@pytest.mark.parametrize(("section", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_line_is_mended(section: str, said: str, meant: str) -> None:
    found = mended(section, said, {})
    assert found is not None
    assert found.line == meant


@cache
def known_names() -> Mapping[str, Meaning]:
    """The names of a game of the library."""
    game = resolve(read(HERON.read_text(encoding="utf-8")).rules.games[0], kit_categories()).value
    assert game is not None
    return game.vocabulary


@pytest.mark.parametrize(("section", "said", "meant"), NAMES, ids=[line[1] for line in NAMES])
def test_names_that_mean_nothing_are_reworded(section: str, said: str, meant: str) -> None:
    sentence = parse_line(section, said).value
    assert sentence is not None
    first, *_ = reworded(section, sentence, known_names())
    assert first.line == meant


@cache
def helpful() -> frozenset[int]:
    """The wordings without which one of the lines would not become what it becomes."""
    used: set[int] = set()
    for section, said, meant in (*LINES, *NAMES):
        for chosen in choices(list(rewrites(section, said))):
            again = mended(section, rewritten(said, chosen), {})
            if rewritten(said, chosen) == meant or (again and again.line == meant):
                used.update(rewrite.wording for rewrite in chosen)
    return frozenset(used)


@pytest.mark.parametrize("number", range(len(WORDINGS)), ids=[wording.old.pattern for wording in WORDINGS])
def test_every_wording_helps(number: int) -> None:
    assert number in helpful(), f"No line of wordings.txt needs {WORDINGS[number].old.pattern}"


def test_what_is_read_as_it_stands_is_written_down_once() -> None:
    source = Path(str(wordings.__file__)).read_text(encoding="utf-8")
    assert [turn.old for turn in TURNS if f'r"{turn.old}"' in source] == []
