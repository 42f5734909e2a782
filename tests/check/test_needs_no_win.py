"""A side that only chases or helps need not win: that it cannot is to know, where two others play for the win."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Severity
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Hazel Store
  ages 8 to 12
space
  court 20 m by 12 m, in one piece
  store zone: 3 m deep, before a back line, no martens there
  home strip: 1 m deep, before the other back line
sides
  martens, 2 players
  {sides}, 2 players each, mirrored
kit
  4 bean bags
set-up
  4 bean bags in the store zone
play
  {each} take a bean bag from the store zone to the home strip
  martens touch players of the other side who carry a bean bag
when
  a player who carries a bean bag is touched: the bean bag goes back{more}
  a bean bag arrives: the carrier's side scores 1 point
finish
  {finish}
"""
SCORE = " and the tagger's side scores 1 point"
SPENT = "the round ends when there are no bean bags in the store zone, more points wins"
THEIRS = "martens win when they have 9 points"


@pytest.mark.parametrize(
    ("sides", "more", "finish", "severity"),
    [
        ("oak and elm", "", SPENT, Severity.NOTE),
        ("oak and elm", "", "oak wins when it has 2 points\n  elm wins when it has 2 points", Severity.NOTE),
        ("oak and elm", SCORE, SPENT, None),
        ("oak and elm", "", f"{SPENT}\n  {THEIRS}", Severity.WARNING),
    ],
)
def test_only_who_chases_or_helps_need_not_win(sides: str, more: str, finish: str, severity: Severity | None) -> None:
    text = SHEET.format(sides=sides, each=sides, more=more, finish=finish).lstrip()
    net = net_in(game_in(text))
    found = [each for each in findings_told(check(net).findings, net) if each.code == "C-unwinnable"]
    assert [each.severity for each in found] == ([severity] if severity else [])
    assert all(("needs none" in each.hint) == (severity is Severity.NOTE) for each in found)
