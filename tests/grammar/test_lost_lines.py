"""A line that cannot be read hides no other mistake of its sheet, and makes none."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from proofreading import judge_of

from grammar.mistakes.proofread import mistakes
from grammar.parse import read
from library import kit_categories

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


@pytest.mark.sample(5)
@pytest.mark.parametrize("path", GAMES, ids=lambda path: path.stem)
def test_a_lost_line_makes_no_other_mistake(path: Path) -> None:
    text, draw = path.read_text(encoding="utf-8"), random.Random(path.stem)
    for number in draw.sample(list(_lines_below(text)), 4):
        broken = _with(text, number, text.splitlines()[number] + _BROKEN)
        if read(broken).unread:
            assert {line for _, line in _places(broken)} == {number + 1}, broken.splitlines()[number]


@pytest.mark.sample(5)
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


def _of_parts(text: str) -> Iterator[tuple[int, str, str]]:
    """The lines of more than one part: their numbers, the first part, and the rest from its sign on."""
    for number in _lines_below(text, "space", "play", "when", "finish"):
        line = text.splitlines()[number]
        cut = re.search(r": |, (?=only |nobody |at most |else )", line)  # names behind a comma may be more of a list
        if cut and '"' not in line:
            yield number, line[: cut.start()], line[cut.start() :]


@pytest.mark.sample(4)
@pytest.mark.parametrize("path", GAMES, ids=lambda path: path.stem)
def test_a_mistake_in_a_line_hides_none_behind_it_and_makes_none(path: Path) -> None:
    text, draw = path.read_text(encoding="utf-8"), random.Random(path.stem)
    lines = list(_of_parts(text))
    for number, first, rest in draw.sample(lines, min(2, len(lines))):
        once = _with(text, number, f"{first} 7 to 7{rest}")
        twice = _with(text, number, f"{first} 7 to 7{rest} 9 9")
        told = [[each.place for each in mistakes(read(sheet, "sheet.rules"), kit_categories())
                 if each.place.line == number + 1] for sheet in (once, twice)]  # fmt: skip
        assert len(told[0]) == 1, once.splitlines()[number]
        assert len(told[1]) == 2, twice.splitlines()[number]


# Lines that hang on each other: what counts lives, points, players who are frozen, and who waits until a point.
HANGING = {
    "fen-bounce": {
        "sides": ("role king: 1 player of each side", "each king has 3 lives", "each other player has 2 lives"),
        "when": ("a player fouls: that player loses a life",),
    },
    "fell-post": {
        "play": (
            "players overarm throw a tennis ball at the players of the other side",
            "whoever is frozen is free after the next point",
        ),
        "when": ("a player is hit: that player freezes", "a tennis ball is caught: a frozen player is free"),
    },
    "burr-toss": {"when": ("a hedger is hit: the thrower's side scores 1 point",)},
}


@pytest.mark.parametrize("stem", HANGING)
def test_a_lost_line_leaves_in_peace_what_hangs_on_it(stem: str) -> None:
    text = Path(f"library/games/{stem}.rules").read_text(encoding="utf-8")
    for section, lines in HANGING[stem].items():
        for line in reversed([each for each in lines if each not in text]):
            text = text.replace(f"\n{section}\n", f"\n{section}\n  {line}\n", 1)
    assert not _places(text)
    for line in (each for lines in HANGING[stem].values() for each in lines):
        number = text.splitlines().index(f"  {line}")
        assert {at for _, at in _places(_with(text, number, f"  {line}{_BROKEN}"))} == {number + 1}, line


SENSELESS = {
    "set-up": ("2 balls of each side in that half",),
    "play": (
        "a hit after a bounce does not count",
        "players stay in that half",
        "a hit above the hip does not count",
        "players roll each ball at the targets",
        "players roll a ball at the targets, only 1 player at a time",
        "whoever is first at a loose ball has it",
        "at most 3 steps with their ball",
    ),
    "when": (
        "a player fouls: the ball goes to step 3 of the half",
        "all targets are knocked: it stays down",
        "a player fouls: that player loses a life",
        "a pass is caught: the thrower returns",
        "a side has 3 points: that player is out",
        "a player crosses the back line: that player is out",
    ),
    "finish": ("the other side wins when it has 3 points", "the first side to 4 points wins"),
}
DRAWN = 16
TOLD_AT_ONCE = 0.75  # the others may be none, were the broken lines there


def _with_senseless_and_broken(text: str, draw: random.Random) -> tuple[str, str, set[str]]:
    """A sheet with up to three senseless lines; the same with three more that cannot be read; and the senseless."""
    put = set[str]()
    for section in draw.sample(sorted(SENSELESS), 3):
        line = draw.choice(SENSELESS[section])
        if f"\n{section}\n" in text:
            text = text.replace(f"\n{section}\n", f"\n{section}\n  {line}\n", 1)
            put.add(line)
    broken = text
    own = [number for number in _lines_below(text) if text.splitlines()[number].strip() not in put]
    for number in draw.sample(own, 3):
        broken = _with(broken, number, broken.splitlines()[number] + _BROKEN)
    return text, broken, put


def _wrong_lines(text: str) -> set[str]:
    lines = text.splitlines()
    found = mistakes(read(text, "sheet.rules"), kit_categories())
    return {lines[each.place.line - 1].strip() for each in found if each.place.line}


def test_what_means_nothing_is_told_beside_lines_that_cannot_be_read() -> None:
    """And nothing is told of a readable line that is no mistake once the others are mended."""
    senseless, told = 0, 0
    for path in random.Random(DRAWN).sample(GAMES, DRAWN):
        whole, broken, put = _with_senseless_and_broken(path.read_text(encoding="utf-8"), random.Random(path.stem))
        before, after = _wrong_lines(whole), _wrong_lines(broken)
        assert not {line for line in after - before if _BROKEN not in line}, path.stem
        senseless += len(before & put)
        told += len(before & put & after)
    assert told >= TOLD_AT_ONCE * senseless


def test_all_that_a_sheet_lacks_is_told_though_all_of_it_stands_at_its_first_line() -> None:
    bare = "game Bare\n\nspace\n  court 18 m by 9 m, halved across\n"
    lacking = ("side under `sides`", "rule under `play`", "end under `finish`")
    titles = [finding.title for finding in judge_of("bare.rules")(bare)]
    assert titles == [f"The game `Bare` has no {what}." for what in lacking]


@pytest.mark.parametrize(
    ("broken", "told"), [("a lantern becomes so", True), ("after 2 min: 8 foam balls come in so", False)]
)
def test_what_lies_nowhere_is_told_beside_a_lost_line_that_brings_nothing_in(broken: str, told: bool) -> None:
    text = Path("library/games/lantern-row.rules").read_text(encoding="utf-8")
    text = text.replace("  4 foam balls in each half\n", "").replace("\nwhen\n", f"\nwhen\n  {broken}\n")
    found = {finding.code for finding in judge_of("lantern.rules")(text)}
    assert ("G-no-place" in found) is told


@pytest.mark.parametrize("owner", ["egg", "marker dome", "cone", "log"])
def test_kit_of_what_an_unreadable_line_may_declare_waits_for_it(owner: str) -> None:
    """It raised: what owns the kit was taken for known, since the line that nobody can read has its word."""
    kit = f"  1 log for each {owner}, like a cone\n  10 eggs, as a marker dome\n  4 cones\n"
    head = "game G\nspace\n  court 18 m by 9 m, halved across\n"
    text = f"{head}sides\n  north and south, 6 to 9 players each\nkit\n{kit}"
    found = mistakes(read(text, "x"), kit_categories())
    assert "L-sentence" in {each.code for each in found}
