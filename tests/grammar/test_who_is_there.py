"""Who is in a place to which nobody is sent is not counted; where a rule sends players it is."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve

SHEET = """
game Strip Race
  ages 8 to 12
  about "Two teams pass until two of them stand at the end."

space
  court 18 m by 9 m, in one piece
  end {place}: 2 m deep, before each back line

sides
  north and south, 5 to 12 players each, mirrored

kit
  2 foam balls

set-up
  foam balls on the court

play
  players pass a foam ball to a team-mate

when
  {rule}

finish
  a side wins when it has 2 players in its end {place}
  after 6 min: a draw
"""


@pytest.mark.parametrize("place", ["strip", "zone"])
@pytest.mark.parametrize(
    ("rule", "codes"),
    [
        ("a pass is caught: the passer's side scores 1 point", ["G-sense"]),
        ("a pass is caught: the passer goes to their end {place}", []),
    ],
)
def test_players_are_counted_where_something_sends_them(place: str, rule: str, codes: list[str]) -> None:
    sheet = parse(SHEET.format(place=place, rule=rule.format(place=place)).lstrip("\n")).value
    assert sheet is not None
    found = resolve(sheet.games[0], library.kit_categories())
    assert [finding.code for finding in found.findings] == codes
