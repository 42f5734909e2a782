"""What strikes people at their age is told before how to look at a ball, and who lacks most years comes first."""

from __future__ import annotations

from attrs import evolve
from scenes import library_games

import library
from compose.care.of_staging import care_of
from compose.care.reminders import by_gravity
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.telling.care import with_cautions
from compose.telling.cautions import cautions_told
from compose.telling.wording import ENGLISH


def test_overarm_throws_at_six_year_olds_come_first() -> None:
    group = evolve(some_class(24), ages_years=(6.0, 7.0))
    told = 0
    for game in library_games().values():
        staging = stage(game, library.norms(), library.kit_names(), group)
        care = care_of(staging)
        cautions = cautions_told(staging.cautions)
        lines = with_cautions(care, cautions, ENGLISH)
        assert set(cautions) <= set(lines)
        if "S-young" in {each.code for each in care}:
            told += 1
            assert care[0].code != "S-young" or "years" in lines[0], game.title
    assert told > 2


def test_who_lacks_most_years_comes_first() -> None:
    group = evolve(some_class(24), ages_years=(6.0, 7.0))
    staging = stage(library_games()["heron-and-pike"], library.norms(), library.kit_names(), group)
    (young,) = (each for each in care_of(staging) if each.code == "S-young")
    several = [evolve(young, numbers=(("youngest", 6.0), ("usual", usual))) for usual in (7.0, 9.0, 8.0)]
    assert [dict(each.numbers)["usual"] for each in by_gravity(several)] == [9.0, 8.0, 7.0]
