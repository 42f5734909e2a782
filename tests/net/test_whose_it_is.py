"""Small words that say whose it is, where they could mean two things: read as they must be, or refused."""

from __future__ import annotations

import pytest

from grammar.core.reading.from_game import core_of
from grammar.core.rules import Add, Happening, Rule
from tests.interpreter.sheets import game_in, granted

SHEET = """
game Keepers
space
  court 18 m by 9 m, {court}
  rest queue: beside {beside}
  nest base: 1 m deep, before each back line
sides
  north and south, 4 to 6 players each
  role keeper: 1 player of each side
kit
  6 foam balls
  2 cones for each side
  4 nuts, like a marker dome
set-up
  cones on the back line of their side
  {balls}
  nuts in the middle
play
  players roll a foam ball at the cones of the other side, 1 in 6 are caught
  keepers touch players of the other side
  players take a nut from the middle to their nest base
  {play}
when
  3 rolls in a row: the roller's side scores 1 point
  {when}
finish
  after 6 min: more points wins, else a draw
"""
HALVES = {"court": "halved across", "beside": "each half", "balls": "3 foam balls in each half"}


def rules_of(when: str, play: str = '"Nobody shouts."') -> list[Rule]:
    """The rules by which somebody scores for what happens to a ball."""
    core = core_of(game_in(SHEET.format(when=when, play=play, **HALVES)), granted()).value
    assert core is not None
    return [rule for rule in core.play.rules if isinstance(rule.trigger, Happening) and not rule.granted]


@pytest.mark.parametrize(
    "event", ["a cone is knocked by a keeper", "a ball is caught by a keeper", "a cone is knocked"]
)
def test_the_keeper_is_who_did_it_where_a_keeper_did(event: str) -> None:
    found = rules_of(f"{event}: the keeper's side scores 2 points")
    assert found
    for rule in found:
        assert isinstance(rule.trigger, Happening)
        (scorer,) = {each.side for each in rule.effects if isinstance(each, Add)}
        (who,) = {each.side for each in rule.trigger.by}
        assert scorer in ({who} if "knocked by" in event else rule.trigger.against)


@pytest.mark.parametrize(
    ("when", "play", "why"),
    [
        ("a player is touched: each other player is out", "", "all but one of them, or all of the other side"),
        ("3 rolls in a row: a nut goes to the roller's nest base", "", "of no one of them has been spoken"),
        ("a ball is blocked: the keeper's side scores 1 point", "", "Nobody can do this here"),
        ("", "keepers do not act", "Another line says what keepers try"),
        ("a ball is held longer than 10 s by a keeper: the other side scores 1 point", "", "nobody does this"),
        ("4 rolls in a row by a keeper: the roller's side scores 1 point", "", "nobody does this"),
        ("a player fouls by a keeper: the other side scores 1 point", "", "nobody does this"),
        ("after 2 min by a keeper: north scores 1 point", "", "nobody does this"),
        ("a player is touched: that player becomes a keeper of the other side", "", "stays with their own side"),
        (
            "a pass is caught by a keeper: the passer's side scores 1 point",
            "players pass a foam ball to a team-mate",
            "one of their own, or one of the other side",
        ),
    ],
)
def test_what_could_be_two_things_is_refused(when: str, play: str, why: str) -> None:
    with pytest.raises(AssertionError, match=why):
        rules_of(when or "a cone is knocked: it stays down", play or '"Nobody shouts."')


def test_they_are_offered_the_place_where_their_own_wait() -> None:
    play = "keepers free the first in the rest queue of the other side"
    with pytest.raises(AssertionError, match="Nobody of their own side waits"):
        rules_of("a player is touched: that player waits in the rest queue", play)
