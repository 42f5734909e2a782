"""Small values of the core, each held against what its words say."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

import library
from compose.staging.resolved import resolved
from grammar.core.guards import PartOfAll, Relation
from grammar.core.precedence import clashing
from grammar.finding import Finding
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import game_in, library_game


@given(st.integers(0, 40), st.booleans())
def test_half_of_all_is_the_next_that_is_enough(all_there_are: int, beyond: bool) -> None:
    half = PartOfAll(halved=True, beyond=beyond)
    least, most = (half.of(all_there_are, each) for each in (Relation.AT_LEAST, Relation.AT_MOST))
    counts = range(-1, all_there_are + 2)
    assert least == min(n for n in counts if (2 * n > all_there_are if beyond else 2 * n >= all_there_are))
    assert most == max(n for n in counts if (2 * n < all_there_are if beyond else 2 * n <= all_there_are))


@given(st.integers(0, 40), st.integers(0, 5), st.sampled_from(list(Relation)))
def test_all_but_so_many_are_so_many_less(all_there_are: int, less: int, relation: Relation) -> None:
    assert PartOfAll(halved=False, less=less).of(all_there_are, relation) == all_there_are - less


def test_each_pair_of_lines_that_clash_is_told_once_and_in_the_order_of_the_sheet() -> None:
    found = 0
    for name in ("heron-and-pike", "cairn-keepers", "sleet-field"):
        rules = resolved(library_game(name)).play.rules
        places = [(rules.index(one), rules.index(other)) for one, other in clashing(rules)]
        assert all(one < other for one, other in places) and len(set(places)) == len(places)
        found += len(places)
    assert found


SIDES = """\
game All Meet
space
  court 18 m by 9 m, halved across
sides
  north and south, 4 to 10 players each, mirrored
kit
  4 soft balls, like a foam ball
  2 cones for each side
set-up
  2 soft balls in each half
  cones on the back line of their side
play
  players underarm throw a soft ball at the cones of the other side
when
  a cone is knocked: {knocked}
finish
  a side wins when the other side has no cones standing
{finish}
"""


def refused(knocked: str = "it stays down", finish: str = "", sheet: str = SIDES) -> Finding:
    read = parse(sheet.format(knocked=knocked, finish=finish), "meet.rules")
    assert read.value is not None, read.findings
    return resolve(read.value.games[0], library.kit_categories()).findings[0]


def test_what_is_advised_for_the_number_of_rounds_can_be_written() -> None:
    hint = str(refused(finish="  one side rests, all meet all, 4 rounds").hint)
    assert "Write 3 rounds, or 6," in hint
    for rounds in (3, 6):
        assert game_in(SIDES.format(knocked="it stays down", finish=f"  one side rests, all meet all, {rounds} rounds"))


ALONE = {
    "north and south, 4 to 10 players each, mirrored": "walkers, 4 to 10 players",
    "halved across": "in one piece",
    "2 cones for each side": "2 cones",
    "2 soft balls in each half": "4 soft balls in the middle",
    "on the back line of their side": "in the middle",
    "at the cones of the other side": "at the cones",
    "a side wins when the other side has no cones standing": "walkers win when there are no cones",
}


def test_what_is_advised_where_all_would_stand_up_at_each_knock() -> None:
    """Of two sides it is said of which, of one it is not."""
    hint = str(refused("all their cones stand up again").hint)
    assert "a side has no cones standing: all its cones stand up again" in hint
    alone = SIDES
    for said, instead in ALONE.items():
        alone = alone.replace(said, instead)
    assert str(refused("all the cones stand up again", sheet=alone).hint) == "Say: it stands up again"
