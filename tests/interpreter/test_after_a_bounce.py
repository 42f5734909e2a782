"""What counts otherwise after a bounce: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, net_in

PLAYERS = {"north": 2, "south": 2}
BOUNCING = """
game Bouncing
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
  reed zone: 2 m deep, before each back line, nobody is hit there
sides
  north and south, 2 to 14 players each, mirrored
kit
  2 foam balls
  2 cones for each side
  1 gate for each side, like a hanging hoop
set-up
  1 foam ball in each half
  cones on the back line of their side
  gate behind the back line of their side
play
  {play}
when
  {when}
finish
  the first side to 3 points wins
"""
GOALS = "players kick a foam ball through the gate of the other side"
HITS = "players overarm throw or roll a foam ball at the players of the other side"
CASES = {
    "a goal": (
        GOALS,
        "a ball goes through a gate: the kicker's side scores 2 points\n"
        "  a ball goes through a gate after a bounce: the kicker's side scores 1 point",
    ),
    "a cone": (
        "players underarm throw a foam ball at the cones of the other side standing or not",
        "a cone is knocked after a bounce: the thrower's side scores 1 point and it stands up again",
    ),
    "a hit": (
        HITS,
        "a player is hit: that player waits in the rest queue and the thrower's side scores 1 point\n"
        "  a player is hit after a bounce: the other side loses 1 point",
    ),
    "a catch": (
        HITS,
        "a player is hit: that player waits in the rest queue and the thrower's side scores 1 point\n"
        "  a ball is caught: the first in the catcher's rest queue returns\n"
        "  a ball is caught after a bounce: the catcher's side scores 1 point",
    ),
    "a pass": (
        "players pass a foam ball to a team-mate",
        "a pass is caught after a bounce: the passer's side scores 1 point\n"
        "  a pass is intercepted after a bounce: the catcher's side scores 2 points",
    ),
    "while": (
        GOALS,
        "a ball goes through a gate while the other side has no points: the kicker's side scores 2 points\n"
        "  a ball goes through a gate after a bounce while it has 1 point: the kicker's side scores 1 point",
    ),
    "a foul": (
        "players overarm throw a foam ball at the players of the other side",
        "a player is hit: the thrower's side scores 1 point\n"
        "  a player is hit above the shoulder: the thrower waits in the rest queue and the other side scores 1 point",
    ),
    "a foul, and where the ball goes": (
        "players roll a foam ball at the players of the other side\n"
        "  a missed ball rests behind the back line of north\n  players fetch balls from behind the back line of north",
        "a player is hit: that player waits in the rest queue and the thrower's side scores 1 point\n"
        "  a north player is hit above the shoulder: that player waits in the rest queue",
    ),
    "where nobody is hit": (
        "players overarm throw a foam ball at the players of the other side\n"
        "  north players stay in the reed zone of north\n  south players stay in their half",
        "a player is hit: the thrower's side scores 1 point and that player waits in the rest queue\n"
        "  a player is hit above the shoulder: the thrower waits in the rest queue",
    ),
    "does not count": (
        f"{HITS}\n  a hit after a bounce does not count\n  a catch after a bounce or off the wall does not count",
        "a player is hit: that player waits in the rest queue and the thrower's side scores 1 point\n"
        "  a ball is caught: the first in the catcher's rest queue returns",
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_both_readers_come_to_the_same(name: str) -> None:
    play, when = CASES[name]
    game = game_in(BOUNCING.format(play=play, when=when))
    mine, its = read_by_both(game, PLAYERS)
    assert not its.differs(mine)
    assert len(its.results) > 5


def test_what_is_rolled_comes_off_a_wall_as_well_but_never_by_a_bounce() -> None:
    rolls = HITS.replace("overarm throw or roll", "roll")
    when = "a player is hit: the roller's side scores 1 point"
    net = net_in(game_in(BOUNCING.format(play=f"{rolls}\n  a hit off the wall does not count", when=when)), PLAYERS)
    tried = [each.attempt for each in net.transitions if each.attempt is not None and each.attempt.skill == "roll"]
    assert tried and {each.ruled_out for each in tried} == {("wall",)}
    with pytest.raises(AssertionError, match="Nothing flies here that could bounce"):
        net_in(game_in(BOUNCING.format(play=f"{rolls}\n  a hit after a bounce does not count", when=when)), PLAYERS)
