"""Both readers let players in play run into an area that is part of their floor, unless it is shut to them."""

from __future__ import annotations

import pytest

from compose.net.net import All, Comparison, Net, Transition
from compose.net.told import Tried
from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

SHEET = """
game End Strip
space
  court 18 m by 12 m, {court}
  end strip: 2 m deep, before each back line{shut}
sides
  north and south, 2 to 6 players each, mirrored
  role keeper: 1 player of each side
kit
  1 soft ball, like a foam ball
set-up
  {ball}
play
  {stay}
  {play}
when
  {when}
  a ball is missed: the ball goes to the other side
finish
  the first side to 2 points wins
"""
WHOLE = {"court": "in one piece", "ball": "north begins with the ball", "shut": "", "stay": '"Move about."'}
TO_STRIP = {
    "play": "players pass a soft ball to a team-mate in the end strip",
    "when": "a pass is caught in the end strip: the passer's side scores 1 point and the ball goes to the other side",
}
FROM_STRIP = {
    "play": "players in the end strip pass a soft ball to a team-mate",
    "when": "a pass is caught: the passer's side scores 1 point and the ball goes to the other side",
}
PLAYERS = {"north": 2, "south": 2}


def net(**parts: str) -> Net:
    return net_in(game_in(SHEET.format(**{**WHOLE, **parts})), PLAYERS)


OPEN = [
    {},
    {"shut": ", only keepers enter there"},
    {"stay": "keepers stay in the end strip"},
    {"court": "halved across", "ball": "1 soft ball in the half of north", "stay": "players stay in their half"},
]


@pytest.mark.parametrize("parts", OPEN, ids=str)
@pytest.mark.parametrize("line", [TO_STRIP, FROM_STRIP], ids=["to", "from"])
def test_readers_agree(line: dict[str, str], parts: dict[str, str]) -> None:
    when = line["when"].replace(" and the ball goes to the other side", "") if "court" in parts else line["when"]
    lines = line | {"when": when} if "court" in parts else line
    text = SHEET.format(**{**WHOLE, **lines, **parts})
    if "court" in parts:
        text = text.replace("  a ball is missed: the ball goes to the other side\n", "")
    agree(game_in(text), PLAYERS)


@pytest.mark.parametrize(("parts", "score"), [
    ({}, True),
    ({"shut": ", nobody enters there"}, False),
    ({"shut": ", only keepers enter there"}, True),
    ({"shut": ", no players there"}, False),
])  # fmt: skip
def test_a_pass_into_the_strip_comes_where_somebody_may_be_there(parts: dict[str, str], score: bool) -> None:
    passes = [move for move in net(**TO_STRIP, **parts).transitions if move.outcome == "success"]
    assert bool(passes) is score


def test_who_is_in_the_strip_is_not_twice_as_busy() -> None:
    """The same players pass from anywhere and from the strip: they share their time among both."""
    both = {"play": f"{FROM_STRIP['play']}\n  players pass a soft ball to a team-mate"}
    moves = net(**{**FROM_STRIP, **both}).transitions
    for population in (0, 1):
        won = [move for move in moves if move.outcome == "success" and _acts(move, population)]
        own = {(move.told.moment.by_at, move.attempt) for move in won if isinstance(move.told, Tried)}
        assert sum(attempt.share for _, attempt in own) == pytest.approx(1.0)


def _acts(move: Transition, place: int) -> bool:
    """Whether those in this place act; the first part of the guard asks for them."""
    assert isinstance(move.guard, All) and isinstance(move.guard.parts[0], Comparison)
    return move.guard.parts[0].terms == ((1, place),)
