"""A line about where a role stays goes before one about all players, however many sides there are."""

from __future__ import annotations

import pytest

from grammar.core.reading.from_game import core_of
from grammar.core.values import PLAIN
from grammar.parse import parse
from grammar.resolve import resolve
from library import granted_sheet, kit_categories

SIDES = ("alder", "birch", "cedar", "dogwood", "elder")
SHEET = """\
game Crossing Over
space
  court 20 m by 14 m, in equal parts
sides
  {sides}, 4 to 8 players each
  role tagger: 1 player of each side
play
  players stay in their half
  taggers stay in the half of the other side
  taggers touch players of the other side
when
  a player is touched: that player is out
finish
  after 5 min: nobody wins
"""


@pytest.mark.parametrize("number", range(2, len(SIDES) + 1))
def test_who_crosses_over_stays_in_every_other_half(number: int) -> None:
    sides = SIDES[:number]
    said = f"{', '.join(sides[:-1])} and {sides[-1]}"
    rules = parse(SHEET.format(sides=said)).value
    game = resolve(rules.games[0], kit_categories()).value if rules is not None else None
    core = core_of(game, granted_sheet()).value if game is not None else None
    assert core is not None
    for home in core.play.homes:
        own = home.who.side == home.at.owner
        assert own is (home.who.role is PLAIN), (home.who, home.at)
    assert len(core.play.homes) == number + number * (number - 1)
