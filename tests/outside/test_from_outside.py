"""Those who wait behind the other side send balls from there: races worked out by hand.

Of exponential events of rates a and b the first is that of rate a with chance a / (a + b), after 1 / (a + b) on
average (W. Feller, An Introduction to Probability Theory and Its Applications, vol. 2, Wiley 1971, ch. I; from memory).
"""

from __future__ import annotations

import pytest

from tests.outside.whole_way import Played

FAR = """
game Far Zones
space
  court 10 m by 6 m, halved across
  far zone: 2 m deep, behind each back line
sides
  north and south, 2 players each, mirrored
kit
  2 soft balls, like a foam ball
set-up
  {set_up}
  1 soft ball in each far zone
play
  players stay in their half
  {play}
  players in the far zone of the other side overarm throw a soft ball at the players of the other side{pace}
  a ball rests in the far zone
when
  {when}
  a player is hit from the far zone of the other side: the thrower returns
finish
  {finish}
"""
RACE = FAR.format(
    set_up="1 player of each side in the far zone of the other side",
    play='"Nobody else throws."',
    pace=", 1 in 2 succeed, 6 times a minute",
    when="a player is hit: play goes on",
    finish="a side wins when it has 2 players in",
)


def test_whoever_frees_themselves_first_has_won() -> None:
    """Each hits three times a minute: half of the rounds each, after a sixth of a minute on average."""
    game = Played(RACE, {"north": 2, "south": 2})
    assert game.space.states == 3
    assert game.wins("north") == pytest.approx(1 / 2, rel=1e-9)
    assert game.absorbed.mean == pytest.approx(1 / 6, rel=1e-9)


def test_players_in_play_and_out_of_it_against_each_other() -> None:
    """North hits from outside three times a minute, south from inside once: the first hit decides."""
    pace = ", 1 in 2 succeed, 6 times a minute"
    text = f"""
    game One Out
    space
      court 10 m by 6 m, halved across
      far zone: 2 m deep, behind each back line
    sides
      north and south, 1 to 2 players each
    kit
      1 soft ball, like a foam ball
      1 hard ball, like a foam ball
    set-up
      1 player of north in the far zone of south
      1 soft ball in the far zone of south
      1 hard ball in the half of south
    play
      players stay in their half
      south players overarm throw a hard ball at the players of north, 1 in 2 succeed, 2 times a minute
      north players in the far zone of south overarm throw a soft ball at the players of south{pace}
      a missed soft ball rests in the far zone of south
      a missed hard ball rests in the half of south
    when
      a player is hit: that player is out
    finish
      a side wins when the other side has no players in
    """
    game = Played(text, {"north": 2, "south": 1})
    assert game.wins("north") == pytest.approx(3 / 4, rel=1e-9)
    assert game.absorbed.mean == pytest.approx(1 / 4, rel=1e-9)
