"""Floor that something stands on is nobody's: neither the hall's for its pupils nor the court's for its players."""

from __future__ import annotations

from pathlib import Path

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

import library
from compose.staging.fixed_things import fixed_in, free_m2
from compose.staging.floor.covered import covered_m2, left_free_m2
from compose.staging.floor.values import Rectangle
from compose.staging.room_findings import HALL_FLOOR
from compose.staging.staging import COURT_SPACE, Staging, stage
from library.records import Obstacle
from tests.fit.class_sheets import sheet_of
from tests.fit.playing_games import library_games
from tests.terminal.running import run

HALL = """
    class Odd Hall
      class of 20
      the hall is {size}
      {line}
    """
BARE = 'about "Invented."'
STAGE = "stage along the east wall, 6 m by 2 m, 1.5 m from its south end"
POST = "post, 50 cm by 40 cm, 12 m from the west wall and 6 m from the south wall"
BESIDE = "post, 50 cm by 40 cm, 1 m from the west wall and 1 m from the south wall"


def staged(size: str, line: str) -> Staging:
    group = sheet_of(HALL.format(size=size, line=line))
    return stage(library_games()["lantern-row"], library.norms(), library.kit_names(), group)


def there(size: str, line: str) -> dict[str, float]:
    return {each.what: each.there for each in staged(size, line).limits}


@pytest.mark.parametrize(("line", "taken"), [(BARE, 0.0), (STAGE, 12.0), (POST, 0.2)])
def test_hall_floor_is_what_nothing_stands_on(line: str, taken: float) -> None:
    assert there("26 m by 20 m", line)[HALL_FLOOR] == pytest.approx((26 * 20 - taken) / 20)


@pytest.mark.parametrize(("line", "taken"), [(BARE, 0.0), (STAGE, 0.0), (BESIDE, 0.0), (POST, 0.2)])
def test_court_floor_is_what_nothing_stands_on(line: str, taken: float) -> None:
    """The court of 18 m by 9 m has clear floor beside a stage or a post at the wall, and none beside a post in the
    middle. Turned, in a hall that is wider than long, that takes as much of it."""
    assert there("26 m by 13 m", line)[COURT_SPACE] == pytest.approx((18 * 9 - taken) / 20)
    across = line.replace("12 m from the west wall and 6 m", "6 m from the west wall and 12 m")
    assert there("13 m by 26 m", across)[COURT_SPACE] == pytest.approx((18 * 9 - taken) / 20)


@given(st.lists(st.tuples(*[st.integers(0, 24)] * 4), max_size=4), st.sampled_from(["26 m by 20 m", "20 m by 26 m"]))
def test_a_court_loses_what_the_hall_has_under_it(corners: list[tuple[int, int, int, int]], size: str) -> None:
    """Beside the same things held against the court's box in the hall, whichever way round it lies."""
    boxes = [Rectangle(min(a, c), min(b, d), max(a, c) + 0.1, max(b, d) + 0.1) for a, b, c, d in corners]
    found = staged(size, STAGE)
    (court,), hall = found.courts, found.school_class.hall
    assert hall is not None
    source = hall.obstacles[0].source
    things = (Obstacle("thing", each.left, each.bottom, each.length, each.width, source) for each in boxes)
    hall = evolve(hall, obstacles=tuple(things))
    assert covered_m2(fixed_in(court, hall)) == pytest.approx(18 * 9 - left_free_m2([court.box], boxes), abs=1e-6)
    assert free_m2(hall) == pytest.approx(hall.area_m2 - covered_m2(boxes))


def test_the_answer_says_how_much_floor_is_free(tmp_path: Path) -> None:
    sheet = tmp_path / "odd.rules"
    for line, told in ((STAGE, True), (BARE, False)):
        sheet.write_text(f"class A\n  class of 20\n  the hall is 26 m by 20 m\n  {line}\n", encoding="utf-8")
        for language, words in (("en", "508 m2 of its floor is free"), ("fr", "508 m2 de son sol sont libres")):
            out = run("fit", "lantern row", "--class", str(sheet), "--quick", "--language", language, code=None).output
            assert (words in " ".join(out.split())) is told
