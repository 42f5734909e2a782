"""Advice works: every line that a message says to write leaves fewer mistakes and no new one.

And there is advice: most slips of one word are answered with the line as it was.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from advised import advices, helps, written
from proofreading import judge_of
from slips import KINDS, LETTERS, slips, spoiled_sheets, twice_in_a_line

from grammar.format import format_file
from grammar.parse import read
from library import game_paths
from tests.grammar.corpus import FILES

SEED = 20
SHEETS = 25
SLIPS = 28
TWICE = 6
OFFERED = 0.6
OFFERED_OF_TWO = 0.5


@pytest.mark.sample(40)
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_advice_for_a_broken_file_helps(path: Path) -> None:
    text = path.read_bytes().decode("utf-8-sig", errors="replace")
    judge = judge_of(path.name)
    before = judge(text)
    for advice in advices(text, before):
        assert helps(advice, before, judge), (advice.line, [finding.title for finding in judge(advice.text)])


def test_every_advice_for_spoiled_sheets_helps() -> None:
    given = 0
    for name, text in spoiled_sheets(SEED, SHEETS):
        judge = judge_of(name)
        before = judge(text)
        for advice in advices(text, before):
            given += 1
            assert helps(advice, before, judge), (name, advice.finding.place.line, advice.line)
    assert given > SHEETS / 2


def test_the_line_as_it_was_is_offered_for_most_slips() -> None:
    told, offered = Counter[str](), Counter[str]()
    for slip in slips(SEED, SLIPS):
        found = judge_of(slip.file)(slip.text)
        told[slip.kind] += bool(found)
        offered[slip.kind] += slip.was.strip() in [line for finding in found for line in written(finding.hint)]
    assert sum(offered.values()) >= OFFERED * sum(told.values()), (told, offered)
    letters = sum(offered[kind] for kind in LETTERS) / sum(told[kind] for kind in LETTERS)
    assert letters >= OFFERED, (told, offered)
    assert all(told[kind] for kind in KINDS)


def test_the_line_as_it_was_is_offered_for_most_with_two_slips() -> None:
    told = offered = 0
    for slip in twice_in_a_line(SEED, TWICE):
        found = judge_of(slip.file)(slip.text)
        told += bool(found)
        offered += slip.was.strip() in [line for finding in found for line in written(finding.hint)]
    assert offered >= OFFERED_OF_TWO * told, (told, offered)


@pytest.mark.parametrize(
    ("was", "slipped"),
    [
        ("more lanterns standing wins, else a draw", "mroe points wisn, else a draw"),
        ("after 6 min: more lanterns standing wins, else a draw", "afetr 6 min: more pionts wins, else a draw"),
        ("after 6 min: more lanterns standing wins, else a draw", "after 6 min: more piont wins, else a draw"),
        ("thrower's side scores 1 point", "thrower's side scores 1 pionts"),
        ("thrower's side scores 1 point", "throwers side scroes 1 pionts"),
        ("a side wins when the other side has no lanterns standing", "the first side to 9 piont wins"),
    ],
)
def test_no_sentence_is_offered_twice(was: str, slipped: str) -> None:
    text = next(path for path in game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
    text = text.replace("it stays down", "it stays down and the thrower's side scores 1 point")
    assert was in text
    spoiled = text.replace(was, slipped)
    offered = [advice.text for advice in advices(spoiled, judge_of("lantern-row.rules")(spoiled))]
    assert offered
    tidied = [format_file(read(each).rules) for each in offered]
    assert len(set(tidied)) == len(tidied), tidied


def test_side_whose_own_line_means_nothing_is_told_and_no_more() -> None:
    homestead = next(path for path in game_paths() if path.stem == "homestead").read_text(encoding="utf-8")
    text = homestead.replace("16 to 32 players, each for themselves", "16 to 32 runners")
    assert text != homestead
    assert "G-sense" in [finding.code for finding in judge_of("homestead.rules")(text)]
