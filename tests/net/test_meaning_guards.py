"""What single sentences do, seen only from outside: in the counts that play reaches and in how often things happen."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import numpy as np
import pytest
from numpy.typing import NDArray

from compose.check import markings
from compose.net.net import Transition
from tests.outside.whole_way import Played

SHEET = """
game Meanings
  ages 8 to 12
space
  court 18 m by 9 m, halved across
sides
  north and south, 1 to 9 players each
kit
  {balls} soft ball{s}, like a foam ball
set-up
  {balls} soft ball{s} in each half
play
  players underarm throw a soft ball at the players of the other side, 2 in 5 succeed, 6 times a minute
{play}
when
  a player is hit: that player is out
{when}
finish
  a side loses when it has no players in
{finish}
"""
CROWD = """
game Crowd
  ages 8 to 12
space
  court 12 m by 12 m, in one piece
  waiting queue: beside the court
sides
  settlers, 4 to 12 players, each for themselves
kit
  {balls} soft balls, like a foam ball
  6 chimneys, like a plastic pin
set-up
  soft balls in the middle
  chimneys on the court, in a ring
  all but {playing} settlers in the waiting queue
play
  settlers roll a soft ball at the chimneys of the other settlers
when
  a chimney is knocked: its keeper waits in the waiting queue and it stays down
  everyone holds a ball for 5 s: all settlers change places with all in the waiting queue
finish
  play goes on until the clock stops
  after 8 min: nobody wins
"""
TWO_POINTS = "  the first side to 2 points wins"


def played(
    play: str = "", when: str = "", finish: str = "", *, north: int = 2, south: int = 2, balls: int = 1
) -> Played:
    """The game with these lines more, so many balls lying in each half."""
    lines = SHEET.format(balls=balls, s="s" * (balls > 1), play=play, when=when, finish=finish)
    text = "\n".join(line for line in lines.splitlines() if line.strip())
    text = text.replace(f"  {balls} soft ball{'s' * (balls > 1)}, like", f"  {2 * balls} soft balls, like")
    return Played(text, {"north": north, "south": south})


def column(game: Played, name: str) -> NDArray[np.int32]:
    """How many are in a place, by its name, in every state that play can reach."""
    number = [place.name for place in game.net.places].index(name)
    return markings(game.space, np.arange(game.space.states))[:, number]


def players_in(game: Played) -> NDArray[np.int32]:
    """How many of north and south are in, in every state."""
    return column(game, "player/north/-/in") + column(game, "player/south/-/in")


def rising(game: Played, name: str) -> NDArray[np.int32]:
    """The states from which a move makes a count rise."""
    counts, sources = column(game, name), game.space.sources()
    found: NDArray[np.int32] = np.unique(sources[counts[game.space.targets] > counts[sources]])
    return found


def rates(game: Played, aim: str) -> Iterator[tuple[Transition, float]]:
    """Each move that comes of an aim, with how often it happens a minute for one who can act."""
    for move, rate in zip(game.net.transitions, game.constants, strict=True):
        if move.attempt.aim == aim:
            yield move, float(rate)


@pytest.mark.parametrize(("players", "balls"), [(2, 1), (2, 2), (2, 3), (3, 1), (3, 2)])
def test_everyone_holds_a_ball_only_while_there_is_one_for_everyone(players: int, balls: int) -> None:
    when = "  everyone holds a ball for 5 s: north scores 1 point"
    game = played(when=when, finish=TWO_POINTS, north=players, south=players, balls=balls)
    held, inside = rising(game, "points/north"), players_in(game)
    assert held.size and (inside[held] <= 2 * balls).all()
    assert (0 in held) == (balls >= players)


@pytest.mark.parametrize("playing", [2, 3])
@pytest.mark.parametrize("balls", [2, 3, 5])
def test_where_all_change_places_no_more_come_in_than_played_at_first(playing: int, balls: int) -> None:
    """Seven settlers, two or three of them in: the others wait, and more of them than have a place to go to."""
    game = Played(CROWD.format(balls=balls, playing=playing), {"settlers": 7})
    before, after = (column(game, "player/settlers/-/in")[ends] for ends in (game.space.sources(), game.space.targets))
    swapped = after > before
    assert swapped.any() and (before[swapped] <= balls).all()
    assert (after[swapped] == playing).all() and after.max() == before[0] == playing


@pytest.mark.parametrize("players", [2, 3])
def test_nobody_passes_to_themselves(players: int) -> None:
    """The last player in has no mate to pass to; two and more have."""
    game = played("  players pass a soft ball to a team-mate, 6 times a minute", north=players)
    passing = np.array([move.side == "north" and move.attempt.aim == "mate" for move in game.net.transitions])
    inside, balls = column(game, "player/north/-/in"), column(game, "ball/soft ball/half/north")
    expected = (inside >= 2) & (balls >= 1) & ~game.space.ended()
    able = np.zeros(game.space.states, dtype=np.bool_)
    able[game.space.sources()[passing[game.space.transitions]]] = True
    assert (able == expected).all() and (inside == 1).any()


@pytest.mark.parametrize(
    ("who", "scorers"),
    [
        ("a player", {"north", "south"}),
        ("a north player", {"north"}),
        ("a south player", {"south"}),
    ],
)
def test_who_arrives_is_one_of_those_named(who: str, scorers: set[str]) -> None:
    when = f"  {who} arrives: the runner's side scores 1 point"
    game = played("  players run from wall to wall", when, TWO_POINTS)
    assert {side for side in game.net.sides if column(game, f"points/{side}").max() > 0} == scorers


@pytest.mark.parametrize(
    "factors", list(itertools.chain.from_iterable(itertools.combinations((50, 70, 120), many) for many in range(4)))
)
def test_factors_of_success_are_multiplied(factors: tuple[int, ...]) -> None:
    plain = played()
    game = played("\n".join(f"  attempts succeed {factor} % as often" for factor in factors))
    for (move, rate), (_, before) in zip(rates(game, "player"), rates(plain, "player"), strict=True):
        success = 2 / 5 * np.prod([factor / 100 for factor in factors])
        assert before == pytest.approx(6 * (2 / 5 if move.outcome == "success" else 3 / 5))
        assert rate == pytest.approx(6 * (success if move.outcome == "success" else 1 - success))


@pytest.mark.parametrize("factors", [(), (150,), (50,), (150, 200), (50, 120, 200)])
def test_factors_of_time_are_multiplied(factors: tuple[int, ...]) -> None:
    plain = played()
    game = played("\n".join(f"  attempts take {factor} % as long" for factor in factors))
    for (_, rate), (_, before) in zip(rates(game, "player"), rates(plain, "player"), strict=True):
        assert rate * np.prod([factor / 100 for factor in factors]) == pytest.approx(before)
