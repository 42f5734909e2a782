"""Every name of the kit can be written in a sheet: as it is, in the plural, and as what another thing is like."""

from __future__ import annotations

from itertools import product

import pytest

import library
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from grammar.words import article, plural
from library import KitItem

ITEMS = library.kit_catalogue()
NAMED = [(name, item) for item in ITEMS.values() for name in (item.name, *item.also)]
SHEET = """game Kit Room

space
  court 18 m by 9 m, halved across

sides
  north and south, 6 to 14 players each, mirrored

kit
  8 play balls, like a foam ball
  {kit}

set-up
  4 play balls in each half
  {set_up}

play
  players stay in their half
  {play}

when
  {when}

finish
  the first side to 10 points wins
"""


def sheet_with(item: KitItem, kit: str, one: str, many: str) -> str:
    """A game that uses a thing in each section, in singular and plural."""
    points = "the thrower's side scores 1 point"
    past = "players overarm throw a play ball past the back line of the other side"
    crossing = f"a play ball crosses the back line: {points}"
    match item.category:
        case "ball":
            lines = (f"4 {many} in each half", past.replace("a play ball", f"a {one}"), f"a {one} is missed: {points}")
        case "target" | "body":
            lines = (
                f"{many} on the back line of their side, evenly spaced",
                f"players overarm throw a play ball at the {many} of the other side",
                f"{article(one)} is knocked: {points} and it stands up again",
            )
        case "ring":
            lines = (
                f"{many} on the back line of their side",
                f"players overarm throw a play ball through the {one} of the other side",
                f"a ball goes through the {one}: {points}",
            )
        case _:
            lines = (f"{many} in the middle", past, crossing)
    return SHEET.format(kit=kit, set_up=lines[0], play=lines[1], when=lines[2])


def game_in(text: str) -> Game:
    """The game of a text; the test fails where it has mistakes."""
    rules = parse(text)
    assert rules.value is not None, [(each.title, each.hint) for each in rules.findings]
    found = resolve(rules.value.games[0], library.kit_categories())
    assert found.value is not None, [(each.title, each.hint) for each in found.findings]
    return found.value


@pytest.mark.parametrize(("name", "item"), NAMED, ids=[name for name, _ in NAMED])
def test_name_can_be_written_in_every_section(name: str, item: KitItem) -> None:
    many = item.plural if name == item.name else plural(name)
    whose = " for each side" if item.category in ("target", "body", "ring") else ""
    line = next(
        each for each in game_in(sheet_with(item, f"8 {many}{whose}", name, many)).kit if each.name != "play ball"
    )
    assert (line.name, line.plural, line.count, line.category) == (name, many, 8, item.category)


@pytest.mark.parametrize(("name", "item"), NAMED, ids=[name for name, _ in NAMED])
def test_another_thing_can_be_like_it(name: str, item: KitItem) -> None:
    whose = " for each side" if item.category in ("target", "body", "ring") else ""
    kit = f"8 eggs{whose}, like {article(name)}"
    line = next(each for each in game_in(sheet_with(item, kit, "egg", "eggs")).kit if each.name == "egg")
    assert (line.like, line.category) == (name, item.category)


def test_one_of_a_thing_is_written_like_many() -> None:
    for name, item in NAMED:
        whose = " for each side" if item.category in ("target", "body", "ring") else ""
        text = sheet_with(item, f"1 {name}{whose}", name, name)
        text = text.replace(f"4 {name} in each half", f"1 {name} in the middle")
        line = next(each for each in game_in(text).kit if each.name != "play ball")
        assert (line.name, line.like) == (name, name)
        assert line.plural == (item.plural if name == item.name else plural(name))


def test_no_name_is_another_ones_plural() -> None:
    names = [name for name, _ in NAMED]
    assert not [(one, other) for one, other in product(names, names) if one != other and plural(one) == other]
