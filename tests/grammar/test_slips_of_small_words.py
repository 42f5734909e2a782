"""One letter wrong in "at", "of" or "to" is seen as such, whatever name stands before: it is no word of that name."""

from __future__ import annotations

import pytest
from advised import written
from proofreading import judge_of

from grammar.finding import Finding
from grammar.mistakes.small_words import SMALL_WORDS, likeness_of_slip, small_words_for

SHEET = """game Bucket Toss

space
  court 18 m by 9 m, halved across
  rest queue: beside each half

sides
  north and south, 6 to 14 players each, mirrored

kit
  8 foam balls
  4 buckets for each side

set-up
  buckets on the back line of their side
  foam balls in each half

play
  players stay in their half
  players overarm throw a foam ball at the buckets of the other side
  players roll a foam ball past the back line of the other side

when
  a bucket is knocked: it stays down
  a ball is caught: the thrower waits in the rest queue

finish
  a side wins when the other side has no buckets standing
  after 6 min: more buckets standing wins, else a draw
"""
THROW = "players overarm throw a foam ball at the buckets of the other side"
SLIPS = (
    (THROW, "ball at the", "ball ot the"),
    (THROW, "ball at the", "ball ta the"),
    (THROW, "ball at the", "ball att the"),
    (THROW, "buckets of the", "buckets fo the"),
    (THROW, "buckets of the", "buckets if the"),
    ("players stay in their half", "stay in", "stay ni"),
    ("buckets on the back line of their side", "buckets on", "buckets onn"),
    ("buckets on the back line of their side", "line of", "line pf"),
    ("foam balls in each half", "balls in", "balls im"),
)
TWICE = """game Bucket Toss

space
  court 18 m by 9 m, halved across

sides
  throwers and fetchers, 6 to 14 players each, mirrored

kit
  8 foam balls
  4 buckts, like a bucket

set-up
  buckts on the middle line
  foam balls in each half

play
  each thrower may throw a foam ball ot the buckets

finish
  after 6 min: nobody wins
"""


def found(text: str) -> list[Finding]:
    return list(judge_of("bucket-toss.rules")(text))


def test_the_sheet_itself_is_sound() -> None:
    assert not found(SHEET)


@pytest.mark.parametrize(("line", "was", "now"), SLIPS)
def test_the_line_as_it_was_is_offered_and_nothing_else_told(line: str, was: str, now: str) -> None:
    assert SHEET.count(line) == 1
    told = found(SHEET.replace(line, line.replace(was, now)))
    assert len(told) == 1, [each.title for each in told]
    assert line in written(told[0].hint), told[0].hint


def test_a_slip_beside_a_name_that_means_nothing_is_one_mistake_whose_line_is_shown_once() -> None:
    (told,) = found(TWICE)
    assert told.code == "L-sentence"
    assert "at the buckts" in told.hint
    assert not told.others


def test_no_name_of_a_guess_is_told_of_a_line_that_cannot_be_read() -> None:
    text = SHEET.replace("ball at the buckets", "ball qxq the buckets")
    assert "L-sentence" in {each.code for each in found(text)}
    assert not [each for each in found(text) if "qxq`" in each.title and each.code == "G-unknown"]


def test_a_slip_is_no_small_word_itself_and_no_number() -> None:
    for word in SMALL_WORDS:
        assert not small_words_for(word)
    assert not small_words_for("two")
    assert likeness_of_slip("ot", "at") == likeness_of_slip("ot", "to") > 0
