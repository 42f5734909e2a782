"""Lives beside what else becomes of somebody: they freeze, wait, go over or change places, and keep what they have."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 2, "south": 1}
SHEET = """
game Lives
space
  court 18 m by 9 m, halved across
  moss queue: beside each half
sides
  north and south, 2 to 14 players each
{king}  each player has 2 lives
kit
  1 foam ball
set-up
  1 foam ball in the half of north
play
  players roll a foam ball at the players of the other side
{play}
when
{when}
finish
  {wins}
"""
HIT = "a player is hit: that player loses a life"
MATES = "players pass a foam ball to a frozen team-mate"
BACK = "the teacher frees the first in each queue, 1 times a minute"
CASES = {
    "and freezes": ([MATES], [f"{HIT} and freezes", "a pass is caught by a frozen player: that player is free"]),
    "in the other order": ([MATES], ["a player is hit: that player freezes and loses a life"]),
    "a king loses one, all freeze": (
        [MATES], ["a king is hit: that king loses a life", "a player is hit: that player freezes"]
    ),
    "and waits": ([BACK], [f"{HIT} and waits in the moss queue"]),
    "and waits, the last life, too": (
        [BACK],
        [f"{HIT} and waits in the moss queue", "a player loses the last life: that player waits in the moss queue"],
    ),
    "the last life freezes": (
        ["whoever is frozen is free after 30 s"], [HIT, "a player loses the last life: that player freezes"]
    ),
    "only the last waits": ([BACK], [HIT, "a player loses the last life: that player waits in the moss queue"]),
    "caught ones wait": ([BACK], [HIT, "a ball is caught: the thrower waits in the moss queue"]),
    "and goes over": ([], [f"{HIT} and joins the other side"]),
    "the last life goes over": ([], [HIT, "a player loses the last life: that player joins the other side"]),
    "and changes places": ([BACK], [
        "a king is hit: that king waits in the moss queue",
        f"{HIT} and changes places with the first in their moss queue",
    ]),
    "all come back": (
        [], [f"{HIT} and waits in the moss queue", "a ball is caught: all in the catcher's moss queue return"]
    ),
    "a life back and in": ([BACK], [
        f"{HIT} and waits in the moss queue",
        "a ball is caught: the catcher gets a life back and the first in the catcher's moss queue returns",
    ]),
    "nothing comes of a king's": ([], ["a king is hit: play goes on", HIT]),
    "a point for each life": (
        [BACK], [f"{HIT} and the roller's side scores 1 point",
                 "a player loses the last life: that player waits in the moss queue"]
    ),
    "comes back by itself": (
        ["whoever waits in the moss queue comes back after 30 s"], [f"{HIT} and waits in the moss queue"]
    ),
}  # fmt: skip


NONE_IN = "a side wins when the other side has no players in"
COUNTED = {
    "at the bell": "after 6 min: more lives wins, else a draw",
    "none left": "a side wins when the other side has no lives",
    "half of them": "a side wins when the other side has fewer than half of its lives",
    "a lead": "a side wins when it has at least 2 more lives than the other side",
}


def _sheet(play: list[str], when: list[str], wins: str = NONE_IN) -> str:
    king = "  role king: 1 player of each side\n" if any("king" in line for line in when) else ""
    said = ("\n".join(f"  {line}" for line in lines) for lines in (play, when))
    return SHEET.format(king=king, wins=wins, **dict(zip(("play", "when"), said, strict=True)))


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    wins = "the first side to 3 points wins" if "point" in case else NONE_IN
    mine, its = read_by_both(game_in(_sheet(*CASES[case], wins)), PLAYERS)
    assert its.differs(mine) == ""


@pytest.mark.parametrize("wins", COUNTED)
@pytest.mark.parametrize(
    "case", ["and freezes", "and waits, the last life, too", "only the last waits", "the last life goes over"]
)
def test_both_readers_count_the_lives_that_are_left(case: str, wins: str) -> None:
    mine, its = read_by_both(game_in(_sheet(*CASES[case], COUNTED[wins])), PLAYERS)
    assert its.differs(mine) == ""


@pytest.mark.parametrize("line", ["a player has lost 3 lives: that player joins the other side",
                                  "a ball is caught: the catcher gets a life back, at most 3"])  # fmt: skip
def test_another_number_of_lives_than_each_has_is_refused(line: str) -> None:
    parsed = parse(_sheet([], [HIT, line]).lstrip("\n"), "(test)")
    assert parsed.value is not None
    assert any(each.code == "G-sense" for each in resolve(parsed.value.games[0], library.kit_categories()).findings)
    same = line.replace("3", "2")
    mine, its = read_by_both(game_in(_sheet([], [HIT, same])), PLAYERS)
    assert its.differs(mine) == ""


def test_a_life_that_is_lost_stays_lost_while_frozen() -> None:
    _, its = read_by_both(game_in(_sheet(["whoever is frozen is free after 30 s"], [f"{HIT} and freezes"])), PLAYERS)
    frozen = {key for state in its.results for key, _ in state if key[0] == "player" and key[3] == "frozen"}
    assert {key[-1] for key in frozen} == {"1"}
