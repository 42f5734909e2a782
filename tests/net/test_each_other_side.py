"""With three sides "each other side" is all but one: of a foul all but who fouled; of what is done to somebody it could
be all but either, and is refused."""

from __future__ import annotations

from itertools import combinations

import pytest

from grammar.core.reading.from_game import core_of
from grammar.core.rules import Add
from tests.interpreter.sheets import game_in, granted

SHEET = """
game Three Parts
space
  court 18 m by 12 m, in equal parts
sides
  alder, birch and cedar, 4 to 6 players each
kit
  6 foam balls
  2 cones for each side
set-up
  cones on the back line of their side, evenly spaced
  2 foam balls in each half
play
  players stay in their half
  players roll a foam ball at the cones of the other side
when
  {event}: {side} scores 1 point
finish
  the first side to 8 points wins
"""
SIDES = ("alder", "birch", "cedar")


def scored(event: str, side: str) -> list[set[str]]:
    """Who scores by each rule of the line."""
    core = core_of(game_in(SHEET.format(event=event, side=side)), granted()).value
    assert core is not None
    adds = [{each.side.key for each in rule.effects if isinstance(each, Add)} for rule in core.play.rules]
    return [each for each in adds if each]


@pytest.mark.parametrize("event", ["a player fouls", "a ball is missed", "a side has no foam balls in its half"])
def test_all_but_the_side_of_which_is_spoken(event: str) -> None:
    found = scored(event, "each other side")
    assert {frozenset(each) for each in found} == set(map(frozenset, combinations(SIDES, 2)))


@pytest.mark.parametrize("each", ["each", "every"])
def test_of_what_is_done_to_somebody_it_is_refused(each: str) -> None:
    with pytest.raises(AssertionError, match="all but the side that did it"):
        scored("a cone is knocked", f"{each} other side")
    assert {side for sides in scored("a cone is knocked", "the other side") for side in sides} == set(SIDES)
