"""With three and more sides the read-back speaks of all others, of the third, and of where a ball was sent; with two of
places of both together."""

from __future__ import annotations

import pytest
from told_games import FOUR, PASSES
from told_sheets import row, told

THREE = FOUR.replace("ash, beech, cedar and damson", "ash, beech and cedar").replace("damson", "cedar")


MISSED = "\n  a ball is missed: {} scores 1 point\nfinish\n"


@pytest.mark.parametrize(
    ("part", "instead", "must"),
    [
        (
            " wins when the other side has no pails standing",
            " wins when it has 2 more pails standing than the other side",
            "2 more pails standing than every other side",
        ),
        ("\nfinish\n", MISSED.format("the other side"), "to another side misses, that side scores 1 point"),
        ("\nfinish\n", MISSED.format("each other side"), "sent by a player of a side misses, every other side scores"),
    ],
)
def test_nobody_is_named_who_stands_for_all(part: str, instead: str, must: str) -> None:
    for sheet in (FOUR, THREE):
        assert part in sheet
        assert must in told(sheet.replace(part, instead))


def test_what_is_on_both_benches_is_counted_together_beside_another_claim() -> None:
    asked = "on the ferry bench\n"
    assert asked in PASSES
    said = told(PASSES.replace(asked, "on the ferry bench and the other side has no players in\n"))
    assert "at least 5 players on the ferry bench of either side" in said


def test_who_runs_with_empty_hands_runs_as_often_as_they_like() -> None:
    said = told(row(play="players run from their back line to the back line of the other side"))
    assert "to the back line of the other side, again and again" in said


def test_first_who_wait_of_every_other_side_are_told_as_one() -> None:
    line = "a player fouls: {} of each other side return{}"
    benches = "in equal parts\n  reed queue: beside each half\n"
    for who, verb, said in (
        ("the first in the reed queue", "s", "the first in the reed queue of every other side returns to play"),
        ("all in the reed queue", "", "all in the reed queue of every other side return to play"),
    ):
        text = FOUR.replace("in equal parts\n", benches, 1)
        back = told(text.replace("\nfinish\n", f"\n  {line.format(who, verb)}\nfinish\n", 1))
        assert f"When a player of a side fouls, {said}." in " ".join(back.split())


def test_who_carries_something_is_of_every_other_side_wherever_they_bring_it() -> None:
    text = FOUR.replace("in equal parts\n", "in equal parts\n  camp base: 1 m deep, before each back line\n", 1)
    text = text.replace("set-up\n", "  12 logs, like a cone\nset-up\n  3 logs in the camp base of each side\n", 1)
    text = text.replace(
        "play\n",
        "play\n  players take a log from the camp base of the other side to their camp base\n"
        "  players touch players of the other side who carry a log\n",
        1,
    )
    text = text.replace("when\n", "when\n  a player who carries a log is touched: the log goes back\n", 1)
    back = " ".join(told(text).split())
    assert "may touch the players of every other side with a log." in back
    assert "touches a player of another side with a log, the log goes back" in back
    assert "third side" not in back and "further side" not in back


CAMPS = """
game Camp Robbers
space
  court 18 m by 18 m, in one piece
  camp base: 3 m deep, in each corner
sides
  reds, blues, greens and greys, 4 to 8 players each, mirrored
kit
  4 gems for each side, like a marker dome
set-up
  gems in the camp base of their side
play
  players take a gem from the camp base of the other side to their camp base
  players touch players of the other side who carry a gem
  players free frozen players of their side, 3 times a minute
when
  a player who carries a gem is touched: that player freezes
finish
  after 3 min: more gems in the camp base wins, else a draw
"""


def test_whosever_the_load_is_its_carriers_are_told_once() -> None:
    text = told(CAMPS)
    assert "The players of each side may touch the players of every other side with a gem." in text
    assert "When a player of a side touches a player of another side with a gem, the player touched freezes" in text
    assert "further side" not in text


def test_how_often_somebody_is_freed_is_not_how_often_they_freeze() -> None:
    assert "a player of their side who is frozen, 3 times a minute" in told(CAMPS)
