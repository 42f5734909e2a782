"""Of what somebody brings only those who bring it are told to arrive with it, and only where they go."""

from __future__ import annotations

import pytest

from compose.telling.read_back import read_back
from compose.telling.wording import wording_of
from grammar.core.reading.from_game import core_of
from tests.interpreter.sheets import game_in, granted

ROUNDS = """
game Mill Run
space
  court 18 m by 9 m, in one piece
  home strip: 1 m deep, before the back line of kickers
  hoop mark: in the middle
sides
  kickers and fielders, 4 to 12 players each
kit
  1 foam ball
set-up
  kickers begin with the ball
play
  kickers kick a foam ball past the back line of fielders
  kickers run from the home strip to the far line
  {brings}
when
  a foam ball arrives{where}: all kickers are out
finish
  after 4 min: fielders win
"""


def told(brings: str, where: str = "") -> str:
    text = ROUNDS.format(brings=brings, where=where).replace("the far line", "the back line of fielders")
    core = core_of(game_in(text), granted()).value
    assert core is not None
    said = read_back(core, wording_of("en")).sections
    return "\n".join(each.text for section in said for each in section.said)


@pytest.mark.parametrize("where", ["", " at the hoop mark"])
def test_who_runs_with_empty_hands_brings_no_ball(where: str) -> None:
    """Kickers who run were told to arrive with a ball that only the fielders bring."""
    said = told("fielders carry a foam ball to the hoop mark", where)
    assert "a fielder arrives" in said and "a kicker arrives" not in said


def test_who_brings_it_there_too_is_told() -> None:
    said = told("players carry a foam ball to the hoop mark")
    assert ("fielder arrives" in said and "kicker arrives" in said) or "a player of a side arrives" in said


def test_what_is_carried_is_never_caught() -> None:
    said = told("fielders carry a foam ball to the hoop mark\n  a caught ball rests on the court")
    caught = [line for line in said.splitlines() if line.startswith("A caught foam ball")]
    assert caught and not any("sent by the fielders" in line for line in caught)
