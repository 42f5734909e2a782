"""Who is ahead when more of their own things are down is told of: hardly anybody means the side that was hit more."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from compose.net.from_game import net_of
from compose.net.lower.own_down import CODE
from tests.interpreter.sheets import game_in, granted
from tests.net.sheet_pieces import KIT, SET_UP, SPACE

AT_OTHERS = "players roll a soft ball at the cones of the other side"
AT_PLAYERS = "players underarm throw a soft ball at the players of the other side"
RACE = "the first side to 2 points wins"
PAST = "players roll a soft ball past the back line of the other side"
KNOCKED_SCORES = "a cone is knocked: the roller's side scores 1 point"
AT_OWN = "players roll a soft ball at the cones of their side"


@pytest.mark.parametrize(
    ("play", "result", "warned"),
    [
        (AT_OTHERS, "more cones down wins", True),
        (AT_OTHERS, "fewer cones down wins", False),
        (AT_OTHERS, "more cones standing wins", False),
        (AT_OWN, "more cones down wins", False),
        (AT_OTHERS, "fewer cones standing wins", True),
        (AT_OWN, "fewer cones standing wins", False),
    ],
)
def test_more_of_their_own_down(play: str, result: str, warned: bool) -> None:
    assert warned_of(play, f"after 5 min: {result}, else a draw") == warned


@pytest.mark.parametrize(
    ("play", "when", "result", "warned"),
    [
        (AT_OTHERS, "", "a side wins when it has no cones standing", True),
        (AT_OTHERS, "", "a side wins when the other side has no cones standing", False),
        (AT_OWN, "", "a side wins when it has no cones standing", False),
        (AT_OTHERS, "a side has no cones standing: that side scores 1 point", RACE, True),
        (AT_OTHERS, "a side has no cones standing: the other side scores 1 point", RACE, False),
        (AT_PLAYERS, "a player is hit: that player is out", "a side wins when it has no players in", True),
        (AT_PLAYERS, "a player is hit: that player is out", "a side wins when the other side has no players in", False),
        (AT_PLAYERS, "a ball is missed: the thrower is out", "a side wins when it has no players in", False),
        (AT_PLAYERS, "a player is hit: that side scores 1 point", RACE, True),
        (AT_OTHERS, "a cone is knocked: its side scores 1 point", RACE, True),
        (AT_OTHERS, "a cone is knocked: its side scores 1 point", "after 5 min: fewer points wins, else a draw", False),
        (AT_OTHERS, "a cone is knocked while it has 1 cone standing: its side scores 1 point", RACE, False),
        (AT_OTHERS, "a cone is knocked: the roller's side scores 1 point", RACE, False),
        (AT_OTHERS, KNOCKED_SCORES, "a side wins when the other side has 0 points", False),
        (AT_PLAYERS, "a player is hit: that side scores 1 point", "a side loses when it has 3 points", False),
        (AT_PLAYERS, "a player is hit: the thrower's side scores 1 point", "a side loses when it has 3 points", True),
        (AT_OTHERS, "a cone is knocked: the roller's side scores 1 point", "after 5 min: fewer points wins", True),
        (AT_OTHERS, "a ball is missed: the roller's side scores 1 point", "after 5 min: fewer points wins", False),
        (PAST, "a ball crosses the back line: the other side scores 1 point", RACE, True),
        (PAST, "a ball crosses the back line: the roller's side scores 1 point", RACE, False),
        (AT_OTHERS, "a ball is missed: the other side scores 1 point", RACE, False),
        (AT_OTHERS, "a ball is missed: the roller's side scores 1 point", RACE, True),
        (AT_OTHERS, "a player fouls: the other side scores 1 point", RACE, False),
        (AT_OTHERS, "a player of north fouls: north scores 1 point", RACE, True),
        (AT_OTHERS, "a player of north fouls: north scores 1 point", "after 5 min: fewer points wins", False),
        (AT_OTHERS, "a player of north fouls: north scores 1 point", "a side loses when it has 3 points", False),
        (AT_PLAYERS, "a player is hit above the shoulder: the thrower's side scores 1 point", RACE, True),
        (AT_PLAYERS, "a player is hit above the shoulder: that side scores 1 point", RACE, False),
    ],
)
def test_gains_by_being_hit(play: str, when: str, result: str, warned: bool) -> None:
    assert warned_of(play, result, when) == warned


@pytest.mark.parametrize(
    ("moves", "wins", "warned"),
    [
        ("away from the thrower", "it has", True),
        ("away from the thrower", "the other side has", False),
        ("towards the thrower", "it has", False),
        ("towards the thrower", "the other side has", True),
    ],
)
def test_gains_by_being_driven_back(moves: str, wins: str, warned: bool) -> None:
    play = "players overarm throw a soft ball at the raft"
    when = f"a raft is knocked: it moves 1 step {moves}"
    assert warned_of(play, f"a side wins when {wins} a raft at home", when, TRACK) == warned


TRACK = {
    "space": f"{SPACE}\n  drift track: 8 steps, from north to south",
    "kit": f"{KIT}\n  1 raft, like a gym ball",
    "set-up": f"{SET_UP}\n  raft on step 4 of the drift track",
}


def warned_of(play: str, result: str, when: str = "", instead: Mapping[str, str] | None = None) -> bool:
    sides = "north and south, 3 to 9 players each"
    sections = {"space": SPACE, "sides": sides, "kit": KIT, "set-up": SET_UP, "play": play} | dict(instead or {})
    sections |= {"when": when} if when else {}
    sections["finish"] = result
    text = "game Down\n  ages 8 to 12\n" + "".join(f"{name}\n  {said}\n" for name, said in sections.items())
    found = [each for each in net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings if each.code == CODE]
    told = {text.splitlines()[each.place.line - 1].strip() for each in found}
    assert told <= {result, when} and len(found) < 2
    return bool(found)
