"""What comes only so often, what hands and feet do together, and that nobody has fewer points than none."""

from __future__ import annotations

import pytest
from told_sheets import row, told, understood

from compose.telling.topics import Topic

LINES = ("every 2 min, three times: another foam ball comes in",
         "a ball is missed: the thrower's side loses a point, but never below zero")  # fmt: skip


def test_three_times_is_three_moments() -> None:
    sheet = row({"kit": ("8 foam", "11 foam"), "finish": ("after 6 min", "after 9 min")}, when=LINES[0])
    said = told(sheet)
    assert [minute for minute in (2, 4, 6, 8) if f"After {minute} minutes, 1 foam ball comes in." in said] == [2, 4, 6]


def test_points_that_are_lost_are_told_with_where_they_end() -> None:
    assert "loses 1 point, but never below 0." in told(row(when=LINES[1]))


def test_hands_and_feet_are_no_body() -> None:
    said = told(row(play="players block shots at the beacons of their side with their hands and feet"))
    assert "with the hands and feet" in said


@pytest.mark.parametrize("said", ["the hands or the body", "their body or their hands", "arms and body"])
def test_neither_hands_nor_body_is_lost(said: str) -> None:
    assert "with the hands and body" in told(row(play=f"players block shots at the beacons of their side with {said}"))


def under(text: str, topic: Topic) -> str:
    """What is told under one heading."""
    return " ".join(said.text for part in understood(text).sections if part.topic is topic for said in part.said)


def test_what_decides_a_level_score_holds_once_the_time_is_up() -> None:
    sheet = row({"finish": ("after 6 min: more beacons standing wins, else a draw",
                            "after 6 min: more points wins, else the next beacon knocked wins")},
                when="a beacon is knocked: the thrower's side scores 1 point")  # fmt: skip
    assert "Once the time is up, points count no more." in under(sheet, Topic.ENDS)
    assert "points" not in under(sheet, Topic.FOLLOWS).replace("scores 1 point", "")
    assert "no minutes" not in told(sheet)


def test_points_that_count_double_are_no_end() -> None:
    sheet = row({"finish": ("more beacons standing wins", "more points wins")},
                play="in the last 60 s, points count double",
                when="a beacon is knocked: the thrower's side scores 1 point")  # fmt: skip
    assert "points count double" in under(sheet, Topic.FOLLOWS)
    assert "double" not in under(sheet, Topic.ENDS)
