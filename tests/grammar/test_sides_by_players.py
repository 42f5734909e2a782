"""Sides called by their players, in the singular and the plural, regular or not."""

from __future__ import annotations

import pytest

from grammar.format import format_file
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories

SHEET = """\
game By Their Players
space
  court 18 m by 9 m, halved across
  moss queue: beside each half
sides
  {declared} and south, 6 to 14 players each
kit
  8 foam balls
set-up
  4 foam balls in each half
play
  {many} overarm throw a foam ball at the players of south
  south players roll a foam ball at the {many}
when
  a {one} is hit: that player waits in the moss queue
finish
  {many} wins when south has no players in
  south wins when {many} have no players in
"""


@pytest.mark.parametrize(("one", "many"), [
    ("wolf", "wolves"), ("goose", "geese"), ("child", "children"), ("mouse", "mice"), ("finch", "finches"),
    ("fisherman", "fishermen"), ("sheep", "sheep"), ("hero", "heroes"), ("carrier", "carriers"), ("pixie", "pixies"),
])  # fmt: skip
@pytest.mark.parametrize("number", ["one", "many"])
def test_a_side_is_known_by_its_players(one: str, many: str, number: str) -> None:
    declared = one if number == "one" else many
    read = parse(SHEET.format(declared=declared, one=one, many=many))
    assert read.value is not None, read.findings[0].title
    game = resolve(read.value.games[0], kit_categories())
    assert game.value is not None, [each.title for each in game.findings]
    assert game.value.sides[0].name == many
    assert parse(format_file(read.value)).value == read.value


def test_a_side_of_another_name_keeps_it() -> None:
    read = parse(SHEET.format(declared="north", one="north player", many="north players"))
    assert read.value is not None
    game = resolve(read.value.games[0], kit_categories()).value
    assert game is not None and game.sides[0].name == "north"
