"""Sides that a sheet calls mirrored are alike in every line, or the line that makes them unlike is told."""

from __future__ import annotations

import pytest

import library
from compose.net.lower.mirrored import same_tasks, unlike_sides
from compose.staging.resolved import resolved
from grammar.core.renaming import renamed
from grammar.core.values import SideId
from tests.interpreter.sheets import game_at, game_in

SHEET = """
game Mirror Row
space
  court 18 m by 9 m, halved across
  {zone}
sides
  north and south, 4 to 9 players each, mirrored
kit
  4 foam balls
  {pots}
set-up
  2 foam balls in each half
  pots on the back line of their side
play
  players stay in their half
  {play}
when
  {when}
finish
  a side wins when the other side has no pots standing
"""
SOUND = {
    "zone": "dim strip: 2 m deep, before each back line, nobody enters there",
    "pots": "3 pots for each side, like a plastic pin",
    "play": "players roll a foam ball at the pots of the other side",
    "when": "a pot is knocked: it stays down",
}


def told(**changed: str) -> list[str]:
    core = resolved(game_in(SHEET.format(**{**SOUND, **changed})))
    return [finding.title for finding in unlike_sides(core)]


@pytest.mark.parametrize(
    ("slot", "line"),
    [
        ("zone", "dim strip: 2 m deep, before the back line of south, nobody enters there"),
        ("pots", "6 pots for north, like a plastic pin\n  3 pots for south, like a plastic pin"),
        ("play", "players of north roll a foam ball at the pots of south"),
        ("when", "a pot of north is knocked: it stands up again"),
    ],
)
def test_a_line_about_one_of_them_is_told(slot: str, line: str) -> None:
    (title,) = told(**{slot: line})
    assert line.partition("\n")[0] in title


def test_a_line_for_each_of_them_is_none() -> None:
    assert not told()
    line = "players of {} roll a foam ball at the pots of {}"
    assert not told(play=f"{line.format('north', 'south')}\n  {line.format('south', 'north')}")


@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_every_mirrored_game_of_the_library_is_so(path: object) -> None:
    assert not list(unlike_sides(resolved(game_at(path))))  # type: ignore[arg-type]


def test_to_exchange_two_names_twice_changes_nothing() -> None:
    play = resolved(game_in(SHEET.format(**SOUND))).play
    names = {SideId("north"): SideId("south"), SideId("south"): SideId("north")}
    assert renamed(renamed(play.rules, names, {}), names, {}) == play.rules
    assert renamed(play.ends, names, {}) != play.ends


@pytest.mark.parametrize(("play", "said"), [(SOUND["play"], 1), ("players of north roll a foam ball at the pots", 0)])
def test_sides_that_change_the_same_task_are_told_so(play: str, said: int) -> None:
    halves = "  after 4 min: nobody wins\n  two halves, the sides change tasks\n"
    text = SHEET.format(**{**SOUND, "play": play}) + halves
    assert len(list(same_tasks(resolved(game_in(text))))) == said
