"""One word of a line exchanged: a teacher who writes it means something else, or nothing that can be read.

What must be answered was written down before anything was run.
"""

from __future__ import annotations

import pytest

import library
from grammar.core.game import Play
from grammar.core.play import Along
from grammar.core.reading.from_game import core_of
from grammar.finding import Severity
from grammar.parse import parse
from grammar.resolve import resolve

SHEET = """game One Word
  ages 9 to 12
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 4 players each, mirrored
kit
  4 foam balls
  2 lanterns for each side, like a plastic pin
  2 pots, like a bucket
  2 mats for each side
set-up
  2 foam balls in each half
  lanterns on the back line of their side
  pots in the middle
  mats behind the lanterns
play
  players stay in their half
  players roll a foam ball at the lanterns of the other side
  players roll a foam ball at the players of the other side, 1 in 4 of the attempts
  at most 1 player may guard each lantern
  1 player stands before each lantern
  a missed ball rests in the half it was sent to
  the teacher stands up a lantern, 1 times a minute
  a ball is held at most 10 s
when
  a lantern is knocked: it stays down and the thrower's side scores 1 point
  a player is hit: that player waits in the rest queue
  a ball is caught: the first in the catcher's rest queue returns
finish
  a side wins when the other side has no lanterns standing
  after 6 min: more lanterns standing wins, else a draw
"""
ROLL = "roll a foam ball at the lanterns of the other side"
KNOCKED = "a lantern is knocked: it stays down and the thrower's side scores 1 point"
WAITS = "that player waits in the rest queue"
FIRST = "the first in the catcher's rest queue returns"
WINS = "a side wins when the other side has no lanterns standing"
SIDES = "north and south, 4 players each, mirrored"
REFUSED = (
    ("players " + ROLL, "players roll all foam balls at the lanterns of the other side"),
    ("players " + ROLL, "players roll each foam ball at the lanterns of the other side"),
    ("players " + ROLL, "players roll 2 foam balls at the lanterns of the other side"),
    ("players " + ROLL, "players roll both foam balls at the lanterns of the other side"),
    ("players " + ROLL, "players of the other side roll a foam ball at the lanterns of north"),
    ("players " + ROLL, "one player rolls a foam ball at the lanterns of the other side"),
    ("at the players of the other side", "at the players of north of the other side"),
    ("roll a foam ball at the players of the other side", "pass a foam ball to each team-mate"),
    ("roll a foam ball at the players of the other side", "pass a foam ball to all team-mates"),
    ("roll a foam ball at the players of the other side", "pass a foam ball to that team-mate"),
    (SIDES, SIDES + "\n  each side has 3 lives"),
    (SIDES, SIDES + "\n  north has 3 lives"),
    (SIDES, SIDES + "\n  a player has 3 lives"),
    (SIDES, "north and south, 8 players in all, mirrored"),
    (SIDES, "north and south, 8 players, mirrored"),
    ("scores 1 point", "scores 1.5 points"),
    ("the thrower's side scores", "either side scores"),
    ("the thrower's side scores", "the thrower's side also scores"),
    ("a lantern is knocked", "a lantern is knocked again"),
    ("a lantern is knocked", "both lanterns are knocked"),
    ("a lantern is knocked", "their lantern is knocked"),
    ("a player is hit", "a player is hit twice"),
    (WAITS, "that player waits in each rest queue"),
    (WAITS, "their player waits in the rest queue"),
    (WAITS, "that player waits in the teacher's rest queue"),
    (WAITS, "that player waits in the thrower's rest queue of the other side"),
    (WAITS, "both players wait in the rest queue"),
    (FIRST, "that player is out"),
    (FIRST, "any in the catcher's rest queue returns"),
    (FIRST, "the second in the catcher's rest queue returns"),
    (WINS, "a side wins when either side has no lanterns standing"),
    (WINS, "both sides win when the other side has no lanterns standing"),
    (WINS, "a side wins when the other side has not all lanterns standing"),
    (WINS, "only north wins when the other side has no lanterns standing"),
    (WINS, "that side wins when the other side has no lanterns standing"),
    ("2 foam balls in each half", "2 foam balls in a half"),
    ("2 foam balls in each half", "4 foam balls in the half"),
    ("2 foam balls in each half", "2 foam balls in the other half"),
    ("2 foam balls in each half", "all but 2 foam balls in each half"),
    ("lanterns on the back line of their side", "lanterns on a back line"),
    ("lanterns on the back line of their side", "lanterns on the back line of a side"),
    ("lanterns on the back line of their side", "2 lanterns on the back line of north"),
    ("lanterns on the back line of their side", "1 lantern on the back line of their side"),
    ("lanterns on the back line of their side", "lanterns of north on the back line of each side"),
    ("pots in the middle", "pots in the middle\n  lanterns on the side line of their side"),
    ("pots in the middle", "pots before the court"),
    ("pots in the middle", "1 pot in the half\n  1 pot in the middle"),
    ("behind the lanterns", "behind the lanterns of the teacher"),
    ("behind the lanterns", "behind the lanterns of the other side"),
    ("behind the lanterns", "behind the targets"),
    ("may guard each lantern", "may guard all lanterns"),
    ("may guard each lantern", "may guard the lanterns"),
    ("1 player stands before each", "1 player stands before the"),
    ("1 player stands before each", "1 player stands before all"),
    ("in the half it was sent to", "in their half"),
    ("in the half it was sent to", "in each half"),
    ("in the half it was sent to", "behind the back line of the catcher"),
    ("in the half it was sent to", "behind the back line of the keeper"),
    ("a missed ball rests", "a passed ball rests"),
    ("stands up a lantern", "stands up all lanterns"),
    ("held at most 10 s", "held at least 10 s"),
    ("a ball is held", "their ball is held"),
)
SAME = (
    ("players " + ROLL, "players of each side " + ROLL),
    ("players " + ROLL, "players roll a foam ball at all lanterns of the other side"),
    (WAITS, "the player waits in the rest queue"),
    ("2 foam balls in each half", "two foam balls in their half"),
    ("a ball is held", "all balls are held"),
    (WINS, "each side wins when the other side has no lanterns standing"),
)
ANOTHER = (
    ("players " + ROLL, "players of north " + ROLL),
    (WAITS, "that player waits in the rest queue of the other side"),
    (FIRST, "the first in each rest queue returns"),
    (FIRST, "the last in the catcher's rest queue returns"),
    ("lanterns on the back line of their side", "lanterns on the back line of the other side"),
    ("1 player stands before each lantern", "1 player stands before each lantern with the feet"),
    ("1 player stands before each", "all players stand before each"),
    (WAITS, "that player waits in the rest queue for 30 s"),
)


def played(text: str) -> Play | None:
    """How a sheet is played; None where it is refused."""
    read = parse(text)
    if read.value is None or any(each.severity is Severity.ERROR for each in read.findings):
        return None
    game = resolve(read.value.games[0], library.kit_categories()).value
    core = core_of(game, library.granted_sheet()).value if game is not None else None
    return core.play if core is not None else None


def with_words(old: str, new: str) -> Play | None:
    assert SHEET.count(old) == 1, old
    return played(SHEET.replace(old, new))


def test_the_sheet_itself_is_sound() -> None:
    assert played(SHEET) is not None


@pytest.mark.parametrize(("old", "new"), REFUSED)
def test_a_word_that_cannot_be_read_is_refused(old: str, new: str) -> None:
    assert with_words(old, new) is None


@pytest.mark.parametrize(("old", "new"), SAME)
def test_another_word_for_the_same(old: str, new: str) -> None:
    assert with_words(old, new) == played(SHEET)


@pytest.mark.parametrize(("old", "new"), ANOTHER)
def test_another_word_for_another_game(old: str, new: str) -> None:
    found = with_words(old, new)
    assert found is not None and found != played(SHEET)


CARRIED = """game Carried
  ages 9 to 12
space
  court 18 m by 9 m, halved across
  wood base: 2 m deep, before each back line
sides
  north and south, 4 players each, mirrored
kit
  4 logs for each side, like a box
set-up
  logs in the wood base of their side
play
  players carry a log from {start} to {goal}
when
  a carrier arrives: the carrier's side scores 1 point
finish
  the first side to 4 points wins
"""


@pytest.mark.parametrize(
    ("start", "goal", "again"),
    [
        ("wall", "wall", True),
        ("their wood base", "the wood base of the other side", False),
        ("the wood base of north", "the wood base of south", False),
    ],
)
def test_what_was_brought_to_another_owner_is_brought_for_good(start: str, goal: str, again: bool) -> None:
    play = played(CARRIED.format(start=start, goal=goal).replace("players carry", "players of north carry"))
    assert play is not None
    ways = [attempt.aim for offer in play.offers for attempt in offer.attempts]
    assert ways and all(isinstance(way, Along) and way.again is again for way in ways)
