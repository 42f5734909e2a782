"""Balls in the hands of a side that does nothing with them: what is advised can be written, and mends it."""

from __future__ import annotations

import re

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Finding
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Mole Run
space
  court 14 m by 9 m, in one piece
  mole queue: beside a side line
sides
  moles, 3 players
  owls, 2 players
kit
  2 foam balls
set-up
  owls begin with 2 foam balls
play
  owls roll a foam ball at the moles
  {play}
when
  a mole is hit: that player {hit}
finish
  owls win when moles have no players in
  after 4 min: moles win
"""
SENT = "waits in the mole queue"
CASES = {
    "what hits them": ("whoever waits in the mole queue comes back after 30 s", SENT),
    "what hits them, and goes on": ("a missed ball goes back", SENT),
}


def stranded(text: str) -> list[Finding]:
    """What says so: a finding of its own, or that of the dead ends to which it leads."""
    net = net_in(game_in(text))
    return [each for each in findings_told(check(net).findings, net) if "in the hands of the moles" in str(each)]


@pytest.mark.parametrize(("play", "hit"), CASES.values(), ids=CASES)
def test_the_lines_advised_can_be_written_and_mend_it(play: str, hit: str) -> None:
    """One for each way by which balls come there."""
    written = list[str]()
    while found := stranded(SHEET.format(play="\n  ".join((play, *written)), hit=hit)):
        line = re.search(r'such as "(.+?)"', found[0].hint)
        assert line is not None and "from the hands" not in line.group(1), found[0].hint
        assert line.group(1) not in written and len(written) < 2, written
        written.append(line.group(1))
    assert written


def test_a_line_by_which_they_fetch_them_is_to_go() -> None:
    """A loose ball they leave to whoever can use it, unless a line of the sheet says otherwise."""
    hit, line = f"{SENT} and the ball goes to the court", "moles fetch foam balls from the court"
    (found,) = stranded(SHEET.format(play=line, hit=hit))
    assert f'Leave out "{line}"' in found.hint
    instead = re.search(r'write instead of it "(.+?)"', found.hint)
    assert instead is not None
    assert not stranded(SHEET.format(play=instead.group(1), hit=hit))
    assert not stranded(SHEET.format(play='"Moles leave the balls alone."', hit=hit))
