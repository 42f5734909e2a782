"""What is offered where things find no place has been tried: taken, all of that line find theirs."""

from __future__ import annotations

import re

import pytest

import library
from compose.staging.laid_out import laid_out
from grammar.finding import Finding
from tests.interpreter.sheets import game_in

PLACES = """\
game Corner Mats
  ages 8 to 12
space
  court {court} m, in one piece
  corner base: {deep} m deep, in 4 places on the court
  log strip: 1 m deep, before each back line
sides
  rooks and jays, 4 to 8 players each, mirrored
kit
  1 foam ball
  {mats} mats
  {logs} logs for each side, like a box
set-up
  mats in the corner base
  logs in the log strip of their side
  rooks begin with the foam ball
play
  players pass a foam ball to a team-mate
when
  a pass is intercepted: the ball goes to the other side
finish
  after 4 min: nobody wins
"""


def problems(text: str, players: int = 6) -> list[Finding]:
    game = game_in(text)
    return list(laid_out(game, {side.name: players for side in game.sides}).problems)


def taken(text: str, hint: str) -> list[str]:
    """The sheet with each of the mends that a hint offers, in turn."""
    deeper = [
        re.sub(rf"(  {area}: )[\d.]+ m deep", rf"\g<1>{deep} m deep", text)
        for area, deep in re.findall(r"[Mm]ake the ([a-z ]+) ([\d.]+) m deep", hint)
    ]
    larger = re.findall(r"[Mm]ake the court ([\d.]+) m by ([\d.]+) m", hint)
    courts = [f"court {long} m by {wide} m" for long, wide in larger]
    return deeper + [re.sub(r"court [\d.]+ m by [\d.]+ m", court, text) for court in courts]


@pytest.mark.parametrize(
    ("court", "deep", "mats", "logs", "ways"),
    [
        ("12 m by 10", "1", 4, 2, 1),  # a larger court makes no base larger
        ("12 m by 10", "1.2", 4, 2, 1),
        ("12 m by 10", "2", 12, 2, 1),
        ("12 m by 6", "2", 4, 40, 1),
        ("12 m by 10", "2", 4, 2, 0),
    ],
)
def test_what_is_offered_mends(court: str, deep: str, mats: int, logs: int, ways: int) -> None:
    text = PLACES.format(court=court, deep=deep, mats=mats, logs=logs)
    found = problems(text)
    assert len(found) == bool(ways)
    for each in found:
        sheets = taken(text, each.hint)
        assert len(sheets) == ways, each.hint
        for sheet in sheets:
            assert sheet != text and each.place.line not in [other.place.line for other in problems(sheet)]
        assert ("lace fewer" in each.hint) == (dict(each.numbers)["placed"] > 0)


def test_all_that_find_no_place_are_counted() -> None:
    [found] = problems(PLACES.format(court="12 m by 10", deep="1.2", mats=4, logs=2))
    assert found.title.startswith("4 mats find no place") and "0.1 m more" in found.title


def test_too_many_for_the_court() -> None:
    path = next(path for path in library.game_paths() if path.stem == "lantern-row")
    text = path.read_text(encoding="utf-8").replace("5 lanterns for each side", "90 lanterns for each side")
    for each in problems(text):
        assert "lace fewer" in each.hint and taken(text, each.hint)
        for sheet in taken(text, each.hint):
            assert each.place.line not in [other.place.line for other in problems(sheet)]
