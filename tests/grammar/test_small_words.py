"""A small word before a name that means nothing there is refused, and the line in other words is none of them."""

from __future__ import annotations

import pytest

import library
from grammar.finding import Severity
from grammar.parse import parse
from grammar.resolve import resolve

SHEET = """game Small Words

space
  court 18 m by 9 m, halved across
  rest queue: beside each half

sides
  north and south, 2 to 9 players each, mirrored

kit
  4 foam balls
  3 lanterns for each side, like a plastic pin

set-up
  lanterns on the back line of their side
  2 foam balls in each half

play
  players stay in their half
  players overarm throw a foam ball at the lanterns or the players of the other side
  the teacher frees the first in each rest queue, 1 times a minute

when
  a lantern is knocked: it stays down and the thrower's side scores 1 point
  a player is hit: that player waits in the rest queue

finish
  a side wins when the other side has no lanterns standing
  the first side to 9 points wins
  after 6 min: more points wins, else a draw
"""
SENSELESS = (
    ("a lantern is knocked", "all lanterns are knocked"),
    ("a lantern is knocked", "that lantern is knocked"),
    ("a player is hit", "all players are hit"),
    ("that player waits", "any player waits"),
    ("that player waits", "a player waits"),
    ("the thrower's side scores", "their thrower's side scores"),
    ("the thrower's side scores", "each thrower's side scores"),
    ("when the other side has", "when its other side has"),
    ("when the other side has", "when a other side has"),
    ("throw a foam ball", "throw that foam ball"),
    ("the teacher frees", "their teacher frees"),
    ("for each side, like", "for a side, like"),
    ("like a plastic pin", "like their plastic pin"),
    ("9 players each", "9 players all"),
    ("  lanterns on the", "  all but lanterns on the"),
    ("9 players each", "9 targets each"),
    ("players overarm throw", "the player overarm throws"),
    ("2 foam balls in each half", "all foam balls in each half"),
    ("waits in the rest queue", "waits in that rest queue"),
    ("at the lanterns or", "at each lantern or"),
)


def mistakes(text: str) -> list[tuple[str, int]]:
    rules = parse(text).value
    assert rules is not None, text
    found = resolve(rules.games[0], library.kit_categories()).findings
    return [(each.code, each.place.line) for each in found if each.severity is Severity.ERROR]


def test_the_sheet_itself_is_sound() -> None:
    assert mistakes(SHEET) == []


@pytest.mark.parametrize(("sense", "nonsense"), SENSELESS)
def test_a_small_word_without_sense_is_refused_with_its_line(sense: str, nonsense: str) -> None:
    assert SHEET.count(sense) == 1
    line = SHEET[: SHEET.index(sense)].count("\n") + 1 + sense.startswith("\n")
    assert ("G-sense", line) in mistakes(SHEET.replace(sense, nonsense))


def test_a_track_without_two_ends_is_told_of_without_a_traceback() -> None:
    path = next(path for path in library.game_paths() if path.stem == "cloud-drift")
    text = path.read_text(encoding="utf-8").replace("from fells to dales", "from fells to fells")
    assert "G-sense" in [code for code, _ in mistakes(text)]


@pytest.mark.parametrize("side", ["each side", "the keeper's side", "hedgers"])
def test_points_of_those_who_play_for_themselves_are_of_one_of_them(side: str) -> None:
    text = next(path for path in library.game_paths() if path.stem == "burr-toss").read_text(encoding="utf-8")
    assert not mistakes(text)
    assert "G-sense" in [code for code, _ in mistakes(text.replace("hit: the thrower's side", f"hit: {side}"))]
