"""Halls told in sentences: measured from the walls as a teacher does, and refused where they cannot be so."""

from __future__ import annotations

import pytest

from grammar.finding import Outcome
from grammar.format import format_file
from grammar.hall_told import hall_told
from grammar.parse import parse
from library import Hall, own_hall

SHEET = """hall Beck Hall
  about "Invented."
  the hall is 15 m by 12 m
  door in the south wall, 2 m from its west end
  door in the east wall, 1 m from its north end, 1.6 m across
  stage along the east wall, 6 m by 2 m, 1.5 m from its south end
  wall bars along the north wall, 6 m by 20 cm, 4 m from its east end
  post, 10 cm by 20 cm, 9 m from the west wall and 2 m from the north wall
  lines of a badminton court
  lines of a badminton court, 1 m from the east wall and 2 m from the south wall
"""
DOOR = "door in the south wall, 2 m from its west end"


def told(text: str) -> Outcome[Hall]:
    rules = parse(text).value
    assert rules is not None
    return own_hall(hall_told(rules.halls[0]), rules.halls[0].title)


def test_everything_lies_where_the_tape_says() -> None:
    """By hand, from the south-west corner: the door's middle is 2 + 0.9/2 along; the stage lies at x = 15 - 2."""
    hall = told(SHEET).value
    assert hall is not None and (hall.name, hall.about) == ("Beck Hall", "Invented.")
    assert (hall.length_m.usual, hall.width_m.usual, hall.area_m2) == (15, 12, 180)
    doors = [(door.side, door.at_m, door.width_m) for door in hall.doors]
    assert doors == [("south", pytest.approx(2.45), 0.9), ("east", pytest.approx(12 - 1 - 0.8), 1.6)]
    boxes = {each.name: (each.x_m, each.y_m, each.length_m, each.width_m) for each in hall.obstacles}
    assert boxes["stage"] == pytest.approx((13, 1.5, 2, 6))
    assert boxes["wall bars"] == pytest.approx((15 - 4 - 6, 11.8, 6, 0.2))
    assert boxes["post"] == pytest.approx((9, 12 - 2 - 0.2, 0.1, 0.2))
    middle, other = hall.markings
    assert (middle.x_m, middle.y_m) == (7.5, 6)
    assert (other.x_m, other.y_m) == pytest.approx((15 - 1 - 13.4 / 2, 2 + 6.1 / 2))


def test_sheet_of_a_hall_is_tidy() -> None:
    rules = parse(SHEET).value
    assert rules is not None and format_file(rules) == SHEET


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("the hall is 12 m by 9 m", "twice"),
        ("door in the south wall, 2 m from its north end", "no north end"),
        ("door in the south wall, 14.5 m from its west end", "does not lie in"),
        ("stage along the east wall, 11 m by 2 m, 1.5 m from its south end", "does not lie in"),
        (
            f"stage along the south wall, 2 m by 1 m, 1 m from its west end\n  {DOOR}",
            "before the door in the south wall",
        ),
        (f"post, 10 cm by 10 cm, 0 m from the south wall and 2.1 m from the west wall\n  {DOOR}", "before the door"),
        ("post, 10 cm by 10 cm, 9 m from the west wall and 2 m from the east wall", "same way"),
        ("post, 0 cm by 10 cm, 9 m from the west wall and 2 m from the south wall", "no size"),
        ("lines of a volleyball court", "does not lie in"),
        ("lines of a badminton court, across the hall", "does not lie in"),
        ("lines of a bowling court", "not known"),
    ],
)
def test_what_cannot_be_so_is_told_at_its_line(line: str, said: str) -> None:
    outcome = told(f"hall Beck Hall\n  the hall is 15 m by 12 m\n  {line}\n")
    assert outcome.value is None
    (finding,) = outcome.findings
    assert said in finding.title and finding.place.line == 3 and finding.hint


@pytest.mark.parametrize(("size", "fine"), [("2 m by 200 m", True), ("1.9 m by 9 m", False), ("9 m by 201 m", False)])
def test_sizes_have_bounds(size: str, fine: bool) -> None:
    assert (told(f"hall A\n  the hall is {size}\n").value is not None) is fine


def test_hall_without_a_size_says_what_to_add() -> None:
    (finding,) = told("hall A\n  door in the south wall, 2 m from its west end\n").findings
    assert "how large" in finding.title and "15 m by 12 m" in finding.hint
