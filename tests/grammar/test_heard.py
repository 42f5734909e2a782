"""What teachers say otherwise is read, means what it should, and is written in the language's own wording by tidy."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grammar.heard.saying import shielded
from grammar.heard.turns import TURNS
from grammar.heard.words import WORDS
from grammar.line_reading import LineReader
from grammar.lines import TextLine
from grammar.own_names import DeclaredNames
from grammar.parse import parse

NAMES = DeclaredNames(
    ("dim strip", "reed strip", "foam balls", "foam ball", "moss queue", "lanterns", "lantern", "bottles", "bottle",
     "stones", "stone", "otters", "otter", "dippers", "dipper", "cones", "cone", "ring", "north", "south"), ()
)  # fmt: skip
READER = LineReader("heard.txt", NAMES, in_a_game=True)
OF_A_CLASS = LineReader("heard.txt")  # which declares no names
LINES = [
    tuple(part.strip() for part in line.split("|"))
    for line in Path(__file__).with_name("heard.txt").read_text(encoding="utf-8").splitlines()
]


def read(section: str, said: str) -> list[str]:
    reader = OF_A_CLASS if section == "class" else READER
    sentences, mistake = reader.sentences(section, TextLine(1, 0, said), {})
    assert mistake is None
    return [sentence.words() for sentence in sentences]


@pytest.mark.parametrize(("section", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_line_is_heard(section: str, said: str, meant: str) -> None:
    assert read(section, said) == meant.split(" + ")


@pytest.mark.parametrize(("section", "said", "meant"), LINES, ids=[line[1] for line in LINES])
def test_what_was_heard_reads_back_as_itself(section: str, said: str, meant: str) -> None:
    for line in meant.split(" + "):
        assert read(section, line) == [line]


NOT_HEARD = [
    ("when", "whoever carries the ball over the middle line: the other side has the ball"),
    ("when", "every 2 min: the otters and the stones change places"),
    ("when", "a player is hit: that player waits in the moss queue until the other side knocks a stone"),
    ("when", "a player is hit: that player waits in the moss queue until their team knocks 2 stones"),
    ("play", "players only roll a ball at the lanterns"),
    ("play", "players must not roll a ball at the lanterns"),
    ("play", "players roll a ball at the lanterns with the left hand"),
    ("when", "whoever is caught by the fox becomes the fox"),
    ("when", "a player who is hit on the head waits in the moss queue"),
    ("when", "a lantern is knocked: it stays down unless it is the last"),
    ("when", "a ball is caught: it returns"),
    ("when", "a stone is hit: it goes to the middle"),
    ("finish", "we play five rounds and whoever wins two rounds wins the game"),
    ("finish", "the team that has no bottles standing for a minute has lost"),
    ("finish", "best of five throws"),
]


@pytest.mark.parametrize(("section", "said"), NOT_HEARD, ids=[line[1] for line in NOT_HEARD])
def test_no_word_that_matters_is_dropped(section: str, said: str) -> None:
    sentences, _ = READER.sentences(section, TextLine(1, 0, said), {})
    assert not sentences or not READER.knows_all(section, sentences[0]) or '"' in sentences[0].words()


EVERY = (*WORDS.parts, *TURNS)


def test_every_saying_is_heard_in_a_line() -> None:
    """Each of the table changes a line of heard.txt; a saying that nothing needs goes."""
    needed = set[int]()
    for section, said, _ in LINES:
        text = shielded(said, NAMES.every).text
        for index, each in enumerate(EVERY):
            after = each.applied(section, text)
            if after != text:
                needed.add(index)
            text = after
    assert not [each.old for index, each in enumerate(EVERY) if index not in needed], "no line of heard.txt needs them"


def test_a_name_of_the_sheet_is_never_said_otherwise() -> None:
    sheet = """\
game Own Words
space
  court 12 m by 12 m, in one piece
sides
  children and the-team, 4 to 6 players each
kit
  2 foam balls
  4 team flags for each side, like a cone
play
  children roll a foam ball at the team flags
finish
  children wins when it has 2 points
"""
    rules = parse(sheet).value
    assert rules is not None
    assert [line.sentence.words() for line in rules.games[0].lines("play")] == [
        "children roll a foam ball at the team flags"
    ]


@given(st.lists(st.sampled_from(['"a cone"', "cone", "ǁ", "7", " ", "north", "x"])).map("".join))
def test_what_stood_behind_a_shield_comes_back_whatever_stands_beside_it(line: str) -> None:
    kept = shielded(line, ("cone", "north"))
    assert kept.opened(kept.text) == line
