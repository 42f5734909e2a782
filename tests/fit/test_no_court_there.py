"""A hall that holds no court is told as such: never as the place of one, nor as one that only has to shrink."""

from __future__ import annotations

import pytest
from class_sheets import sheet_of
from playing_games import library_games

import library
from compose.fit.fit import fit
from compose.staging.room_findings import NO_COURT
from compose.terminal.fitting import fit_lines
from grammar.resolve.possible_counts import LEAST_COURT_M

CLASS = """
    class Small
      class of 24
      the hall is {size}
    """
HALLS = ("3 m by 3 m", "5 m by 2 m", "3.9 m by 20 m", "4.1 m by 20 m", "8 m by 8 m", "12 m by 8 m")


@pytest.mark.parametrize("size", HALLS)
def test_a_court_that_does_not_go_in_is_not_told_to_lie_there(size: str) -> None:
    least = min(float(each.removesuffix(" m")) for each in size.split(" by "))
    for game in library_games().values():
        found = fit(game, sheet_of(CLASS.format(size=size)), library.norms(), library.kit_names())
        room, lines = found.staging.room, "".join(line for line in fit_lines(found) if line.startswith("Hall: "))
        assert room is not None
        assert ("along it" in lines or "across it" in lines) == (room.fits and bool(found.staging.courts)), game.title
        for each in found.findings:
            if each.code == "F-hall":
                assert (each.hint == NO_COURT) == (least - 2.0 < LEAST_COURT_M), game.title
            if each.code == "F-too-many" and "has room for" in each.hint:
                assert room.short_m <= 0, game.title


def test_toll_stone_has_no_court_in_three_metres() -> None:
    game = library_games()["toll-stone"]
    found = fit(game, sheet_of(CLASS.format(size="3 m by 3 m")), library.norms(), library.kit_names())
    (many,) = (each for each in found.findings if each.code == "F-too-many")
    assert "no room for one court" in many.hint
