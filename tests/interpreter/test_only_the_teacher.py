"""Who of all fetches from a place: the teacher alone, where a line says that nobody else does."""

from __future__ import annotations

import pytest

from compose.check.check import check
from compose.telling.read_back import read_back
from compose.telling.wording import wording_of
from grammar.core.reading.from_game import core_of
from grammar.finding import IDLE, Severity
from grammar.game import Game
from tests.interpreter.sheets import game_in, granted, net_in
from tests.interpreter.test_same_states import agree

ALLEY = """
game Plover Alley
space
  court 18 m by 9 m, in one piece
  roll strip: 1 m deep, along each side line
sides
  rollers and plovers, 2 to 6 players each
kit
  2 foam balls
set-up
  foam balls in the roll strip
play
  rollers stay in the roll strip
  rollers roll a foam ball at the plovers
  {rests}
  the teacher fetches balls from the middle
  {nobody}
when
  a plover is hit: that player is out
finish
  rollers win when plovers have no players in
"""
REST, NOBODY = "a missed ball rests in the middle", "nobody fetches balls from the middle"


def game(rests: str, nobody: str) -> Game:
    text = ALLEY.format(rests=rests, nobody=nobody)
    return game_in("\n".join(line for line in text.splitlines() if line.strip()))


@pytest.mark.parametrize("nobody", [NOBODY, ""])
def test_both_readers_let_the_teacher_fetch(nobody: str) -> None:
    """To say of the players that nobody does contradicted what the teacher does."""
    agree(game(REST, nobody), {"rollers": 2, "plovers": 2})


def test_it_is_told_who_does() -> None:
    core = core_of(game(REST, NOBODY), granted()).value
    assert core is not None
    for language, said in (("en", "Nobody but the teacher fetches"), ("fr", "Personne d’autre que l’enseignant")):
        sections = read_back(core, wording_of(language)).sections
        assert any(said in each.text for section in sections for each in section.said)


def test_balls_that_lie_about_the_court_are_never_in_its_middle_and_that_does_harm() -> None:
    """Whoever is to fetch them never does: it was told to do no harm."""
    found = [each for each in check(net_in(game("", ""), {"rollers": 2, "plovers": 2})).findings if each.code == IDLE]
    assert [each.severity for each in found] == [Severity.WARNING]
    sound = check(net_in(game(REST, NOBODY), {"rollers": 2, "plovers": 2})).findings
    assert IDLE not in {each.code for each in sound}
