"""A refusal speaks of what the sheet says: its numbers, its words; and what it advises is no longer refused for it."""

from __future__ import annotations

import pytest

from tests.grammar.test_values_of_the_core import ALONE, SIDES, refused

FEW = SIDES.replace("4 soft balls,", "{{kit}} soft balls,").replace("2 soft balls in each half", "{{placed}}")
FEW = FEW.replace("when\n", "when\n  {{comes}}\n")


def told(kit: int, placed: int, comes: str) -> tuple[str, str]:
    there = f"{placed} soft balls in the half of north"
    sheet = FEW.replace("{{kit}}", str(kit)).replace("{{placed}}", there).replace("{{comes}}", comes)
    found = refused(finish="  after 6 min: more cones standing wins, else a draw", sheet=sheet)
    return found.title, str(found.hint)


@pytest.mark.parametrize(("kit", "coming"), [(5, 2), (9, 3)])
def test_how_many_are_placed_are_there_and_come_in(kit: int, coming: int) -> None:
    placed = kit - coming + 2
    title, _ = told(kit, placed, f"after 2 min: another {coming} soft balls come in")
    assert title == f"The set-up places {placed} soft balls; the kit has {kit}, and {coming} come in later."


@pytest.mark.parametrize(("number", "often"), [(1, "every 60 s, 2 times"), (2, "after 60 s")])
def test_how_often_as_many_come_in_as_are_left(number: int, often: str) -> None:
    said = f"another {number} soft ball{'s' * (number > 1)} come{'s' * (number == 1)} in"
    _, hint = told(5 * number + 1, 5 * number - 1, f"every 60 s: {said}")
    assert f"{often}: {said}" in hint


def test_what_is_never_so_is_said_of_what_it_was_asked_of() -> None:
    found = refused(sheet=SIDES.replace("no cones standing", "no soft balls standing"))
    assert found.title == "Balls are never standing."


@pytest.mark.parametrize(
    "sides", ["walkers, 4 to 10 players, {}, mirrored", "wasps and bees, 4 to 10 players each, {}"]
)
def test_who_plays_for_themselves_has_no_other_side(sides: str) -> None:
    sheet = SIDES
    for said, instead in ALONE.items():
        sheet = sheet.replace(said, instead)
    sheet = sheet.replace("walkers, 4 to 10 players", sides.format("each for themselves"))
    sheet = sheet.replace("walkers win", f"{sides.split()[0].strip(',')} win")
    assert "there are no sides against each other" in refused(sheet=sheet).title
