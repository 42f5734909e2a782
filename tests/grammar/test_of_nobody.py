"""No side scores for what is nobody's, nobody is called thrower where nobody throws, and others' things stay theirs."""

from __future__ import annotations

import pytest

import library
from grammar.core.reading.from_game import core_of
from grammar.parse import parse
from grammar.resolve import resolve
from library.granted import granted_sheet

SHEET = """game Row for All
  ages 8 to 12
  skills kick, aim
  about "One row for both sides."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0

space
  court 18 m by 9 m, halved across

sides
  east and west, 2 to 9 players each, mirrored

kit
  2 foam balls
  4 cones, like a cone

set-up
  1 foam ball in each half
  cones on the middle line

play
  players stay in their half
  players kick a foam ball at the cones

when
  a cone is knocked: it stays down and its side scores 1 point

finish
  the first side to 2 points wins
  after 6 min: more points wins, else a draw
"""
OWNED = SHEET.replace("4 cones,", "2 cones for each side,")


def refusals(text: str) -> list[str]:
    sheet = parse(text).value
    assert sheet is not None
    found = resolve(sheet.games[0], library.kit_categories())
    if found.value is None:
        return [each.title for each in found.findings]
    return [each.title for each in core_of(found.value, granted_sheet()).findings]


@pytest.mark.parametrize("said", ["its side scores", "its side loses"])
def test_the_side_of_what_belongs_to_no_side_is_refused(said: str) -> None:
    (told,) = refusals(SHEET.replace("its side scores", said))
    assert told == "`its side` is nobody here: what is knocked belongs to no side."


@pytest.mark.parametrize("said", ["the kicker's side scores", "the other side scores", "each side scores"])
def test_another_side_scores(said: str) -> None:
    assert not refusals(SHEET.replace("its side scores", said))


def test_of_what_each_side_has_its_side_scores() -> None:
    assert not refusals(OWNED)


def test_where_nobody_throws_nothing_is_the_throwers() -> None:
    line = "\nplay\n  players fetch foam balls from {where}\n"
    assert not refusals(OWNED.replace("\nplay\n", line.format(where="behind their back line")))
    (told,) = refusals(OWNED.replace("\nplay\n", line.format(where="behind the kicker's back line")))
    assert told == "`the kicker's back line`: of nobody who could be meant has been spoken here."


def test_nobody_blocks_what_belongs_to_every_side() -> None:
    line = "\nplay\n  1 player stands before each cone with the feet\n"
    blocks = "\nplay\n  players block shots at the cones of {whose} with the feet\n"
    assert not refusals(OWNED.replace("\nplay\n", line))
    assert not refusals(OWNED.replace("\nplay\n", blocks.format(whose="their side")))
    for whose in ("each side", "every side", "a side"):
        (told,) = refusals(OWNED.replace("\nplay\n", blocks.format(whose=whose)))
        assert told == "Nobody blocks what belongs to others."
