"""What the rules alone strand is told however little was looked at, and nothing that all of play would not show."""

from __future__ import annotations

import pytest

from compose.check import check, explore
from compose.check.findings.stranded import stranded
from compose.check.findings.stranded_for_good import stranded_for_good
from compose.check.space import Budget, StateSpace
from compose.check.study import Study
from tests.interpreter.sheets import game_in, net_in
from tests.wrong_games.test_wrong_games import every_pair
from tests.wrong_games.wrong import Pair, players

FEW = Budget(states=12)
GAME = """
game Sit For Good
space
  court 18 m by 9 m, halved across
  sit queue: beside each half
sides
  north and south, 3 to 14 players each, mirrored
kit
  4 foam balls
  2 pins for each side, like a plastic pin
set-up
  pins behind the back line of their side
  2 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the players or the pins of the other side
  a ball is held at most 10 s
  {play}
when
  a player is hit: that player waits in the sit queue
finish
  a side wins when the other side has no players in
  after 7 min: more players in wins, else a draw
"""


@pytest.mark.parametrize(
    ("play", "codes"),
    [
        ('"Sit with your back to the wall."', {"C-stranded"}),
        ("whoever waits in the sit queue comes back after 30 s", set()),
    ],
)
def test_it_is_told_though_hardly_anything_was_looked_at(play: str, codes: set[str]) -> None:
    net = net_in(game_in(GAME.format(play=play)), {"north": 6, "south": 6})
    result = check(net, FEW)
    assert result.space is not None and not result.space.complete
    assert {each.code for each in result.findings if each.code != "C-budget"} == codes


@pytest.mark.parametrize("which", ["wrong", "sound"])
@every_pair
def test_all_of_play_shows_what_the_rules_alone_strand(pair: Pair, which: str) -> None:
    game = pair.game(which)
    net = net_in(game, players(game))
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    study = Study(space)
    whole = {place for found in stranded(study) for place in found.about}
    assert {place for found in stranded_for_good(study) for place in found.about} <= whole
