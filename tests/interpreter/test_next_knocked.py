"""A level score that the next target decides: both readers let only that decide, and points count no more."""

from __future__ import annotations

import pytest
from scipy.stats import skellam

from compose.forecast.chain.exact import exact_course
from compose.forecast.odds import odds
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree
from tests.outside.whole_way import Played

GAME = """
game Next One
space
  court 10 m by 6 m, halved across
  {space}
sides
  north and south, 1 player each
kit
  2 soft balls, like a foam ball
  1 mat for each side, like a thick mat
  2 cones for each side
set-up
  1 soft ball in each half
  mats on the back line of their side
  cones on the back line of their side
play
  players stay in their half
  north players roll a soft ball past the back line of south, {north} in 10 succeed, 2 times a minute
  south players roll a soft ball past the back line of north, {south} in 10 succeed, 2 times a minute
  north players roll a soft ball at the {target} of south, {hits} in 10 succeed, 2 times a minute, {half}
  south players roll a soft ball at the {target} of north, 1 in 10 succeed, 2 times a minute, {half}
  a ball rests in the half it came from
when
  a ball crosses the back line: the roller's side scores 1 point
  {when}
finish
  {bound}
  after 4 min: more points wins, else the next {what} knocked wins
"""
USUAL = {"half": "1 in 2 of the attempts", "space": "", "bound": "the first side to 3 points wins"}
USUAL |= {"north": 4, "south": 1, "hits": 2, "target": "mats", "what": "mat", "when": ""}
LINES = {
    "a mat, with points as far as they are counted": {"bound": ""},
    "a cone, which falls": {"target": "cones", "what": "cone"},
    "it scores, too": {"when": "a mat is knocked: the roller's side scores 1 point"},
    "it costs": {"when": "a mat is knocked: its side loses 1 point"},
    "the other things": {"target": "cones", "what": "cone", "when": "a cone is knocked: it stands up again"},
    "who waits for a point": {
        "space": "rest queue: beside each half",
        "when": "a ball leaves the court: the thrower waits in the rest queue until the next point",
    },
}


def _text(change: dict[str, object]) -> str:
    lines = [line for line in GAME.format(**{**USUAL, **change}).splitlines() if line.strip()]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("way", LINES)
def test_both_readers_let_only_that_decide(way: str) -> None:
    agree(game_in(_text(dict(LINES[way]))), {"north": 1, "south": 1})


@pytest.mark.parametrize(("north", "south", "hits"), [(4, 1, 2), (3, 3, 1)])
def test_points_decide_until_the_clock_and_mats_after_it(north: int, south: int, hits: int) -> None:
    """Each tries twice a minute, half of it at the mat: two Poisson processes of points until the clock, whose
    difference is Skellam's (1946, as `scipy.stats.skellam`; from memory); of the mats rung after it the first is of
    either side with its share of both rates."""
    game = Played(_text({"north": north, "south": south, "hits": hits, "bound": ""}), {"north": 1, "south": 1})
    course = exact_course(game.space, game.constants, 30.0)
    a, b = north / 10 * 4, south / 10 * 4
    level = skellam.pmf(0, a, b)
    wins = skellam.sf(0, a, b) + level * hits / (hits + 1)
    assert odds(game.net, course).of("north") == pytest.approx(wins, abs=1e-7)
    assert course.length.mean.value == pytest.approx(4 + level / ((hits + 1) / 10), abs=1e-6)


REFUSED = {
    "no target": ({"what": "soft ball"}, "a target or a big body"),
    "not of points": ({}, "decides only where points were level"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_decides_nothing_is_refused(case: str) -> None:
    change, why = REFUSED[case]
    text = _text(dict(change))
    if case == "not of points":
        text = text.replace("more points wins, else", "more cones standing wins, else")
    sheet = parse(text, "(test)").value
    assert sheet is not None
    found = resolve(sheet.games[0], kit_categories())
    assert found.value is None and any(why in each.title for each in found.findings), [f.title for f in found.findings]
