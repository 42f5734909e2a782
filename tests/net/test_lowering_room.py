"""How many find room in an area: told at the set-up, and as the reason why something never comes."""

from __future__ import annotations

import pytest
from sheet_pieces import SET_UP, SPACE, net, refusals

from compose.net.net import Move, Net
from tests.check.cases import told

HIT = "a player is hit: that player waits in the rest queue"
ROOM_FOR_1 = SPACE.replace("beside each half", "beside each half, at most 1 player there")
ROOM_FOR_0 = SPACE.replace("beside each half", "beside each half, at most 0 players there")


@pytest.mark.parametrize(
    ("area", "set_up", "told", "instead"),
    [
        ("each half, at most 1 player", "2 players of each side", "2 north players", "at most 2 players there"),
        ("the court, at most 3 players", "2 players of each side", "4 players", "at most 4 players there"),
        ("each half, at most 1 player", "all but 1 players", "2 north players", "at most 2 players there"),
        ("each half, at most 0 south players", "1 south player", "1 south player", "at most 1 south player there"),
    ],
)
def test_more_at_the_start_than_find_room(area: str, set_up: str, told: str, instead: str) -> None:
    space = SPACE.replace("each half", f"{area} there")
    (finding,) = refusals(HIT, space=space, set_up=f"{SET_UP}\n  {set_up} in the rest queue")
    assert finding.code == "N-room"
    assert finding.title.startswith(f"The set-up puts {told} in the rest queue; there is room for ")
    assert f'"{instead}"' in finding.hint
    assert finding.place.line == 13


def rooms(of: Net) -> set[tuple[tuple[str, ...], int]]:
    """The room that moves of a net are bound by: names of places, and for how many."""
    found = [
        room for each in of.transitions for effect in each.effects if isinstance(effect, Move) for room in effect.rooms
    ]
    return {(tuple(of.places[place].name for place in room.places), room.most) for room in found}


def test_every_side_has_room_of_its_own_unless_it_is_shared() -> None:
    north, south = "player/north/-/rest queue", "player/south/-/rest queue"
    assert rooms(net(HIT, space=ROOM_FOR_1)) == {((north,), 1), ((south,), 1)}
    assert rooms(net(HIT, space=ROOM_FOR_1.replace("each half", "the court"))) == {((north, south), 1)}
    assert rooms(net(HIT)) == set()


def test_where_one_only_stands_nothing_is_bound() -> None:
    zone = f"{SPACE}\n  goal zone: 2 m deep, before each back line, at most 1 player there"
    assert rooms(net(HIT, space=zone)) == set()
    assert [move.told for move in net(HIT, space=zone).transitions] == [move.told for move in net(HIT).transitions]


def test_want_of_room_is_the_reason_told() -> None:
    found = told(net(HIT, finish="a side wins when the other side has no players in", space=ROOM_FOR_0))
    [hint] = [finding.hint for finding in found if f'"{HIT}" never takes effect.' in f"{finding.title} {finding.hint}"]
    assert "there is never room for more" in hint.lower()


def test_a_finish_that_asks_for_more_than_find_room_says_so() -> None:
    finish = (
        "a side wins when it has 2 players in the rest queue\n  a side wins when the other side has no cones standing"
    )
    found = told(net(f"{HIT}\n  a cone is knocked: it stays down", finish=finish, space=ROOM_FOR_1))
    (idle,) = [finding for finding in found if finding.code == "C-idle"]
    assert "there are never at least 2 north players in the rest queue, for there is room for 1" in idle.hint.lower()
