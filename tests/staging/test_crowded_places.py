"""Places that a small court brings together, and the floor that is left to those who may not go everywhere."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import library
from compose.staging.crowded_places import crowded_places
from compose.staging.floor.covered import covered_m2
from compose.staging.floor.values import Rectangle
from compose.staging.floor_to_use import FLOOR_TO_USE
from compose.staging.school_class import some_class
from compose.staging.staging import COURT_SPACE, Staging, stage
from grammar.finding import Severity
from tests.fit.playing_games import library_games
from tests.interpreter.sheets import game_in

SHEET = """
game Narrow Banks
space
  court {long} m by {wide} m, {cut}
  {place}
sides
  wrens and finches, 4 to 20 players each, mirrored
kit
  4 foam balls
set-up
  2 foam balls in each half
play
  players stay in {home}
  players roll a foam ball at the players of the other side
finish
  after 3 min: nobody wins
"""

RINGED = "mill circle: 2 m deep, in the middle\n  ring circle: 1 m deep, around the mill circle"


def text_of(long: float, wide: float, place: str, cut: str = "halved across", home: str = "their half") -> str:
    return SHEET.format(long=long, wide=wide, place=place, cut=cut, home=home)


def staged(text: str, pupils: int = 16) -> Staging:
    return stage(game_in(text), library.norms(), library.kit_names(), some_class(pupils))


@pytest.mark.parametrize("wide", [4, 5, 5.5, 6, 9])
def test_strips_along_both_side_lines_lie_over_each_other_by_what_they_lack(wide: float) -> None:
    text = text_of(12, wide, "bank strip: 3 m deep, before each side line", cut="in one piece", home="the court")
    found = list(crowded_places(game_in(text.replace("2 foam balls in each half", "foam balls in the middle"))))
    assert [dict(each.numbers)["short_m"] for each in found] == ([pytest.approx(6 - wide)] if wide < 6 else [])
    assert all(each.severity is Severity.WARNING and [span.line for span in each.others] == [4] for each in found)


@pytest.mark.parametrize(("wide", "over"), [(6, 0.0), (4, 0.0), (3, 0.5)])
def test_what_lies_around_a_circle_reaches_over_the_edge_of_a_court_that_is_narrower(wide: float, over: float) -> None:
    found = list(crowded_places(game_in(text_of(12, wide, RINGED))))
    assert [dict(each.numbers)["short_m"] for each in found] == ([pytest.approx(over)] if over else [])


def test_what_lies_over_another_place_on_any_court_is_meant_to() -> None:
    place = "edge strip: 1 m deep, before each side line\n  dim strip: 2 m deep, before each back line"
    assert not list(crowded_places(game_in(text_of(18, 9, place))))


MATS = "guard zone: {deep} m deep, across the middle{shut}\n  safe base: 2 m deep, in 4 places on the court{only}"


@pytest.mark.parametrize("deep", [5, 9, 10, 12])
@pytest.mark.parametrize(("shut", "only", "told"), [
    ("", ", nobody is touched there", False),
    (", only guards enter there", ", nobody is touched there", False),
    (", only guards enter there", ", no guards there", True),
    (", nobody enters there", "", True),
])  # fmt: skip
def test_a_place_may_lie_in_another_unless_they_exclude_each_other(deep: int, shut: str, only: str, told: bool) -> None:
    text = text_of(18, 12, MATS.format(deep=deep, shut=shut, only=only), cut="in one piece", home="the court")
    text = text.replace("2 foam balls in each half", "foam balls in the middle")
    text = text.replace("mirrored\n", "mirrored\n  role guard: 2 players of each side\n")
    over = any("guard zone" in each.title for each in crowded_places(game_in(text)))
    assert over is (told and deep > 7)  # the mats lie 3.5 m from the middle


@pytest.mark.parametrize(("stay", "told"), [
    ("players stay on the safe base", False),
    ("guards stay in the guard zone\n  wrens stay on the safe base", True),
])  # fmt: skip
def test_homes_of_two_want_floor_of_their_own(stay: str, told: bool) -> None:
    text = text_of(18, 12, MATS.format(deep=12, shut="", only=""), cut="in one piece", home="the court")
    text = text.replace("players stay in the court", stay)
    text = text.replace("2 foam balls in each half", "foam balls in the middle")
    text = text.replace(", mirrored\n", "\n  role guard: 2 players of finches\n")
    assert bool(list(crowded_places(game_in(text)))) is told


def test_no_game_of_the_library_is_crowded_on_its_own_court() -> None:
    assert {name: told for name, game in library_games().items() if (told := list(crowded_places(game)))} == {}


@pytest.mark.parametrize(("deep", "left"), [(1, 40 * 3), (3, 40), (3.5, 20)])
def test_what_nobody_enters_leaves_each_side_so_much_less_of_its_half(deep: float, left: float) -> None:
    """Of a half of 4 m by 40 m those eight may use what lies before the strip."""
    found = staged(text_of(8, 40, f"dim strip: {deep} m deep, before each back line, nobody acts there"))
    (limit,) = [each for each in found.limits if each.what == FLOOR_TO_USE]
    assert limit.there == pytest.approx(left / 8) and limit.sources
    assert limit.there < next(each.there for each in found.limits if each.what == COURT_SPACE)


def test_where_all_of_the_half_is_theirs_nothing_else_is_asked() -> None:
    found = staged(text_of(8, 9, "dim strip: 2 m deep, before each back line, nobody guards there"))
    assert FLOOR_TO_USE not in [each.what for each in found.limits]


@given(st.lists(st.tuples(*[st.integers(0, 6)] * 4), max_size=5))
def test_floor_under_several_places_counts_once(corners: list[tuple[int, int, int, int]]) -> None:
    """Beside the squares of a metre that lie under any of them, counted one by one."""
    boxes = [Rectangle(min(a, c), min(b, d), max(a, c), max(b, d)) for a, b, c, d in corners]
    squares = ((x + 0.5, y + 0.5) for x in range(6) for y in range(6))
    assert covered_m2(boxes) == sum(any(box.holds(*middle) for box in boxes) for middle in squares)
