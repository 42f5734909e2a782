"""Lines on the floor stay for the next game of a lesson where its court is as good as the one before."""

from __future__ import annotations

import pytest
from drawn_games import lanterns
from planned_games import planned_game

import library
from compose.draw.lesson.marked_floor import floor_lines
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import lesson_table
from compose.telling.wording import ENGLISH, wording_of

STAY, ANEW = "The lines stay", "Mark the floor anew"


@pytest.mark.parametrize(
    ("court", "said"),
    [
        ("18 m by 9 m", None),
        ("18.2 m by 9 m", STAY),
        ("17.5 m by 9.5 m", STAY),
        ("17.4 m by 9 m", ANEW),
        ("18 m by 9.6 m", ANEW),
    ],
)
def test_lines_stay_within_half_a_step(court: str, said: str | None) -> None:
    """By hand, beside 18 m by 9 m: half a metre is within what is paced out."""
    games = [planned_game(lanterns("18 m by 9 m"), 4.0), planned_game(lanterns(court), 4.0)]
    told = lesson_card(lesson_table(games, library.norms()), "Monday").sections
    (lines,) = (part.lines for part in told if part.heading.startswith("2."))
    found = [words for words in (STAY, ANEW) if any(line.startswith(words) for line in lines)]
    assert found == ([said] if said else [])
    for wording in (ENGLISH, wording_of("fr")):
        assert bool(list(floor_lines(games[0].staging, games[1].staging, wording))) is bool(said)
