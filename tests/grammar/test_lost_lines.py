"""A line that cannot be read hides no other mistake of its sheet, and makes none."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from proofreading import judge_of

from grammar.parse import read

GAMES = sorted(Path("library/games").glob("*.rules"))
_BROKEN = " zzqq wwyy zzqq"


def _lines_below(text: str, *headings: str) -> Iterator[int]:
    """The numbers of the lines below some headings, from 0."""
    heading = "head"
    for number, line in enumerate(text.splitlines()):
        if line and not line.startswith(" "):
            heading = "head" if line.startswith(("game", "note")) else line.strip()
        elif line.strip() and (not headings or heading in headings) and not line.strip().startswith("note:"):
            yield number


def _with(text: str, number: int, line: str) -> str:
    lines = text.splitlines()
    lines[number] = line
    return "\n".join(lines) + "\n"


def _places(text: str) -> set[tuple[str, int]]:
    return {(finding.code, finding.place.line) for finding in judge_of("sheet.rules")(text)}


@pytest.mark.sample(8)
@pytest.mark.parametrize("path", GAMES, ids=lambda path: path.stem)
def test_a_lost_line_makes_no_other_mistake(path: Path) -> None:
    text, draw = path.read_text(encoding="utf-8"), random.Random(path.stem)
    for number in draw.sample(list(_lines_below(text)), 4):
        broken = _with(text, number, text.splitlines()[number] + _BROKEN)
        if read(broken).unread:
            assert {line for _, line in _places(broken)} == {number + 1}, broken.splitlines()[number]


@pytest.mark.sample(8)
@pytest.mark.parametrize("path", GAMES, ids=lambda path: path.stem)
def test_a_lost_line_hides_no_unknown_name(path: Path) -> None:
    text, draw = path.read_text(encoding="utf-8"), random.Random(path.stem)
    lost = draw.choice(list(_lines_below(text, "set-up", "play", "when", "finish", "care")))
    named = list(_lines_below(text, "play", "when", "finish"))
    for number in draw.sample(named, min(2, len(named))):
        line = text.splitlines()[number]
        unknown = re.sub(r"\b(foam ball|ball|lantern|half|court)(s?)\b", r"vexing\2", line, count=1)
        if number == lost or unknown == line:
            continue
        alone = _with(text, number, unknown)
        both = _with(alone, lost, text.splitlines()[lost] + _BROKEN)
        assert {each for each in _places(alone) if each[1] == number + 1} <= _places(both), unknown


def test_all_that_a_sheet_lacks_is_told_though_all_of_it_stands_at_its_first_line() -> None:
    bare = "game Bare\n\nspace\n  court 18 m by 9 m, halved across\n"
    lacking = ("side under `sides`", "rule under `play`", "end under `finish`")
    titles = [finding.title for finding in judge_of("bare.rules")(bare)]
    assert titles == [f"The game `Bare` has no {what}." for what in lacking]
