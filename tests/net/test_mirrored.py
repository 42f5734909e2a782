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


RING = """
game Ring of Rows
space
  court 18 m by 12 m, in equal parts
sides
  {sides}, 4 to 9 players each, mirrored
kit
  {balls} foam balls
  3 pots for each side, like a plastic pin
set-up
  2 foam balls in each half
  pots on the back line of their side
play
  players stay in their half
  {play}
when
  a pot is knocked: it stays down
finish
  after 6 min: more pots standing wins, else a draw
"""


@pytest.mark.parametrize(("kit", "told"), [("1 bib for each north", []), ("3 bibs for north", []),
                                           ("1 bib for each north\n  1 bucket for north", ["N-mirrored"])])  # fmt: skip
def test_bibs_of_one_side_leave_both_mirrored(kit: str, told: list[str]) -> None:
    """What tells two sides apart changes no rule; a bucket that is aimed at does."""
    text = RING.format(sides="north and south", balls=4, play="players roll a foam ball at the pots of the other side")
    core = resolved(game_in(text.replace("kit\n", f"kit\n  {kit}\n", 1)))
    assert [finding.code for finding in unlike_sides(core)] == told


NAMES = ("alder", "birch", "cedar", "dogwood")


def told_of_ring(*aims: tuple[int, int]) -> list[str]:
    names = NAMES[: 1 + max(max(aim) for aim in aims)]
    play = "\n  ".join(f"{names[one]} players roll a foam ball at the pots of {names[other]}" for one, other in aims)
    sides = f"{', '.join(names[:-1])} and {names[-1]}"
    core = resolved(game_in(RING.format(sides=sides, balls=2 * len(names), play=play)))
    return [finding.code for finding in unlike_sides(core)]


@pytest.mark.parametrize(
    "aims",
    [
        ((0, 1), (1, 2), (2, 0)),
        ((0, 1), (1, 2), (2, 3), (3, 0)),
        ((0, 2), (2, 1), (1, 3), (3, 0)),
        ((0, 1), (1, 0), (2, 3), (3, 2)),
    ],
)
def test_ring_in_which_each_has_one_before_and_one_behind_is_fair(aims: tuple[tuple[int, int], ...]) -> None:
    assert not told_of_ring(*aims)


@pytest.mark.parametrize(
    "aims", [((0, 1), (1, 2), (2, 1)), ((0, 1), (1, 2), (2, 3), (3, 1)), ((0, 1), (1, 2), (2, 0), (2, 1))]
)
def test_ring_with_a_side_at_which_more_aim_is_none(aims: tuple[tuple[int, int], ...]) -> None:
    assert told_of_ring(*aims) == ["N-mirrored"]
