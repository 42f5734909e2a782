"""Rounds of more than two sides that are all played, and the points of places: counted by hand and by writing out
every sequence of rounds (elementary; no source needed)."""

from __future__ import annotations

from itertools import product

import attrs
import numpy as np
import pytest

import compose.forecast.added_up as added_up
from compose.check.match import can_win
from compose.check.study import Study
from compose.check.taken_along import ahead_over_all, taken_along
from compose.forecast.added_up import over_all_rounds
from compose.forecast.chain.exact import exact_course
from compose.forecast.course import Course, Score
from compose.forecast.matches import game_odds
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.outside.whole_way import Played

SHEET = """
game Three Lanes
space
  court 12 m by 6 m, in equal parts
sides
  north, south and west, 1 player each, mirrored
kit
  1 soft ball for each side, like a foam ball
  1 cart for each side, like a bucket
set-up
  soft balls in the half of each side
  carts on the back line of their side
play
  players underarm throw a soft ball into the cart of their side, 3 in 10 succeed, 2 times a minute
  a ball rests in the half it came from
when
  a ball goes into a cart: the thrower's side scores 1 point
finish
  the first side to {needed} points wins
  {end}
"""
ROUNDS = "3 rounds are played, more points over all wins"
PLACES = ROUNDS + "\n  the first side scores 3, the next 1 points"
SIDES = {"north": 1, "south": 1, "west": 1}


def played(needed: int, end: str) -> Played:
    return Played(SHEET.format(needed=needed, end=end), SIDES)


@pytest.mark.parametrize("end", [ROUNDS, PLACES])
def test_three_alike_over_three_rounds(end: str) -> None:
    """To one point each wins a round with 1/3, the others are level. Alone ahead is who wins three (1/27) or two
    (3 · 2/27) of three: 7/27; each wins one in 6 of 27."""
    game = played(1, end)
    found = game_odds(game.net, exact_course(game.space, game.constants, 30.0))
    assert [chance.value for _, chance in found.wins] == pytest.approx([7 / 27] * 3, abs=1e-9)
    assert found.drawn.value == pytest.approx(6 / 27, abs=1e-9)
    assert found.rounds == 3


def test_places_count_and_not_the_points_of_the_round() -> None:
    """To two points a round can end 2:1:0; what the places are worth is added instead."""
    game = played(2, PLACES)
    ended = np.flatnonzero(game.space.ended())
    markings = game.space.encoding.markings(game.space.codes[ended])
    assert {tuple(each) for each in taken_along(game.net, markings)} == {
        *((3, 1, 0), (3, 0, 1), (1, 3, 0), (0, 3, 1), (1, 0, 3), (0, 1, 3)),
        *((3, 1, 1), (1, 3, 1), (1, 1, 3)),
    }


def along(course: Course, values: list[list[int]], chances: list[float]) -> Course:
    return attrs.evolve(course, score=Score(along=(np.array(values), np.array(chances))))


@pytest.mark.parametrize("drawn", [False, True])
def test_as_by_writing_out_every_sequence(drawn: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    game = played(1, ROUNDS)
    course = exact_course(game.space, game.constants, 30.0)
    values, chances = [[4, 3, 2, 1], [0, 0, 5, 5], [1, 6, 0, 2], [2, 2, 2, 2]], [0.4, 0.3, 0.2, 0.1]
    wins = [0.0] * 4
    for rounds in product(range(4), repeat=3):
        points = [sum(values[each][side] for each in rounds) for side in range(4)]
        if points.count(max(points)) == 1:
            wins[points.index(max(points))] += float(np.prod([chances[each] for each in rounds]))
    if drawn:
        monkeypatch.setattr(added_up, "MOST_CELLS", 1)
    found, nobody = over_all_rounds(along(course, values, chances), 3)
    assert [each.value for each in found] == pytest.approx(wins, abs=0.01 if drawn else 1e-9)
    assert nobody.value == pytest.approx(1 - sum(wins), abs=0.01 if drawn else 1e-9)
    assert all((each.margin > 0) == drawn for each in found)


def test_who_wins_no_round_may_win_over_all() -> None:
    """Second twice behind a different first each time: 4 to 3 to 3 over two rounds, and never ahead in one."""
    net = attrs.evolve(played(1, ROUNDS).net, match=attrs.evolve(played(1, ROUNDS).net.match, parts=2))
    assert set(ahead_over_all(net, np.array([[3, 2, 0], [0, 2, 3]]))) == {"north", "south", "west"}
    assert set(ahead_over_all(net, np.array([[3, 1, 0], [0, 1, 3]]))) == {"north", "west"}


@pytest.mark.parametrize("seed", range(20))
def test_whoever_can_be_ahead_is_found_among_all_sequences(seed: int) -> None:
    net, drawn = played(1, ROUNDS).net, np.random.default_rng(seed)
    along = drawn.integers(-3, 4, (int(drawn.integers(1, 7)), 3))
    sums = [sum(rounds) for rounds in product(along, repeat=net.match.parts)]
    ahead = {side for number, side in enumerate(net.sides) if any(_alone(total, number) for total in sums)}
    assert set(ahead_over_all(net, along)) == ahead


def _alone(points: np.ndarray, number: int) -> bool:
    return all(points[number] > each for other, each in enumerate(points) if other != number)


def test_all_three_can_win() -> None:
    assert set(can_win(Study(played(1, PLACES).space))) == set(SIDES)


@pytest.mark.parametrize(
    ("end", "why"),
    [
        ("the first side scores 3, the next 1 points", "several rounds"),
        (ROUNDS + "\n  the first side scores 4, the next 3, 2 and 1 points", "3 sides play, and 4 places"),
        (ROUNDS + "\n  the first side scores 1, the next 3 points", "better place"),
    ],
)
def test_what_no_place_can_mean_is_refused(end: str, why: str) -> None:
    sheet = parse(SHEET.format(needed=2, end=end).lstrip("\n"), "(test)").value
    assert sheet is not None
    assert any(why in each.title for each in resolve(sheet.games[0], kit_categories()).findings)
