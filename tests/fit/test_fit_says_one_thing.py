"""What the lines of the fit call too little is to be mended, and the other way round."""

from __future__ import annotations

import pytest
from class_sheets import sheet_of
from playing_games import library_games

import library
from compose.fit.fit import fit
from compose.staging.room_findings import HALL_FLOOR
from compose.terminal.fitting import fit_lines
from grammar.finding import Severity

CLASS = """
    class Full
      class of {pupils}
      ages 9 to 10
      the hall is {size}
      stage along the north wall, 6 m by 2 m, 4 m from its west end
      lesson of 40 min
    """


@pytest.mark.parametrize("pupils", [12, 27, 40])
@pytest.mark.parametrize("size", ["15 m by 12 m", "20 m by 12 m", "27 m by 15 m"])
def test_too_little_is_to_mend(pupils: int, size: str) -> None:
    for game in library_games().values():
        found = fit(game, sheet_of(CLASS.format(pupils=pupils, size=size)), library.norms(), library.kit_names())
        told = [line for line in fit_lines(found) if "too little" in line]
        of_limits = [each for each in found.findings if each.code in ("F-area", "F-run-off")]
        assert len(told) == sum(each.severity is Severity.WARNING for each in of_limits), game.title


def test_a_small_hall_is_told_as_what_no_game_changes() -> None:
    found = fit(
        library_games()["toll-stone"],
        sheet_of(CLASS.format(pupils=40, size="15 m by 12 m")),
        library.norms(),
        library.kit_names(),
    )
    (limit,) = (each for each in found.staging.limits if each.what == HALL_FLOOR)
    assert limit.broken
    (note,) = (each for each in found.findings if HALL_FLOOR in each.title)
    assert note.severity is Severity.NOTE and "no game changes that" in note.title
