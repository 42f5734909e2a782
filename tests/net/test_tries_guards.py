"""How much is tried, in every state of drawn games: as many act as players and balls allow, each by its share.

Every sentence says "6 times a minute", so what is tried tells how many act. Whatever a try comes to, and whoever
waits in a queue, it is one try: none may be lost and none counted twice.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

import networkx as nx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from compose.check import markings
from tests.outside.whole_way import Played

SHEET = """
game Tries
  ages 8 to 12
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 1 to 9 players each{role}
kit
  {soft}, like a foam ball
  {red}, like a soft volleyball
  2 cones for each side
set-up
  {soft} in the half of north
  {red} in the half of north
  cones on the back line of their side
play
{play}
when
  a cone is knocked: it stays down
{when}
finish
  a side wins when the other side has no cones standing
  a side loses when it has no players in
"""
PACE = 6
CONES, PLAYERS = "at the cones of the other side", "at the players of the other side"
AIMER = "\n  role aimer: 1 player of each side"
Uses = Mapping[str, set[str]]
BOTH, RED = {"soft ball", "red ball"}, {"red ball"}
ALIKE: Mapping[str, Uses] = {
    "": {"-": BOTH},
    AIMER: {"-": BOTH, "aimer": BOTH},
}  # who may use what, by what the sheet says of the aimer
UNLIKE: Mapping[str, Uses] = {AIMER + ", uses a red ball": {"-": BOTH, "aimer": RED}}
WAITS = "  a player is hit: that player waits in the rest queue"
OUT = "  a player is hit: that player is out"
WHEN = ("", OUT, WAITS, f"{WAITS}\n  a ball is caught: the first in the catcher's queue returns")


class Tries(Played):
    """A game of which every state tells how many of north act."""

    def __init__(
        self, play: list[str], when: str = "", role: str = "", *, players: int, balls: tuple[int, int]
    ) -> None:
        soft, red = (f"{many} {kind} ball{'s' * (many > 1)}" for many, kind in zip(balls, ("soft", "red"), strict=True))
        lines = "\n".join(f"  {line}" for line in play)
        text = SHEET.format(role=role, soft=soft, red=red, play=lines, when=when)
        super().__init__(text, {"north": players, "south": 2})

    @cached_property
    def counts(self) -> Mapping[str, NDArray[np.int32]]:
        """How many are in each place, by its name, in all states that do not end the round."""
        table = markings(self.space, np.flatnonzero(~self.space.ended()))
        return {place.name: table[:, number] for number, place in enumerate(self.net.places)}

    def acting(self, *aims: str) -> NDArray[np.float64]:
        """How many of north aim at targets or players, or at what is named, in the states of `counts`."""
        sought = aims or ("target", "player")
        own = np.array([move.side == "north" and move.attempt.aim in sought for move in self.net.transitions])
        chosen = own[self.space.transitions]
        rates = np.bincount(self.space.sources()[chosen], self.chain.rates[chosen], minlength=self.space.states)
        return rates[~self.space.ended()] / PACE

    def most(self, uses: Uses) -> NDArray[np.int64]:
        """As many as can act: in each pool of roles and the balls that they share, the fewer of the two."""
        shared = nx.Graph([(role, kind) for role, kinds in uses.items() for kind in kinds])
        acting = np.zeros(len(next(iter(self.counts.values()))), dtype=np.int64)
        for pool in nx.connected_components(shared):
            players = sum(self.counts[f"player/north/{role}/in"] for role in pool if role in uses)
            balls = sum(self.counts[f"ball/{kind}/half/north"] for kind in pool if kind not in uses)
            acting += np.minimum(players, balls)
        return acting


@st.composite
def plays(draw: st.DrawFn) -> list[str]:
    """Sentences about cones and players of the other side, each with its part of the attempts or without."""
    part = st.sampled_from(("", ", 1 in 2 of the attempts", ", 1 in 4 of the attempts"))
    aims = draw(st.lists(st.sampled_from((CONES, PLAYERS)), min_size=1, max_size=2, unique=True))
    return [f"players underarm throw a ball {aim}, {PACE} times a minute{draw(part)}" for aim in aims]


many = st.tuples(st.integers(1, 2), st.integers(1, 2))


@pytest.mark.parametrize("when", WHEN, ids=("nothing", "out", "waits", "returns"))
@pytest.mark.parametrize("role", ALIKE, ids=("no role", "aimer"))
@settings(max_examples=4, deadline=None)
@given(play=plays(), players=st.integers(2, 4), balls=many)
def test_every_try_comes_to_something_once(
    role: str, when: str, play: list[str], players: int, balls: tuple[int, int]
) -> None:
    game = Tries(play, when, role, players=players, balls=balls)
    assert np.allclose(game.acting(), game.most(ALIKE[role]), rtol=1e-9)


@pytest.mark.parametrize("role", UNLIKE, ids=("aimer",))
@settings(max_examples=12, deadline=None)
@given(play=plays(), players=st.integers(3, 4), balls=many)
def test_who_shares_some_balls_takes_none_twice(
    role: str, play: list[str], players: int, balls: tuple[int, int]
) -> None:
    """Aimers may use red balls only, the others every ball: both are in one pool."""
    game = Tries(play, OUT, role, players=players, balls=balls)
    assert (game.acting() <= game.most(UNLIKE[role]) + 1e-9).all()


@pytest.mark.parametrize(
    ("cones", "players", "at_cones", "at_players"),
    [
        ("", "", 1 / 2, 1 / 2),
        ("", ", 1 in 4 of the attempts", 3 / 4, 1 / 4),
        (", 1 in 4 of the attempts", "", 1 / 4, 3 / 4),
        (", 1 in 4 of the attempts", ", 1 in 2 of the attempts", 1 / 3, 2 / 3),
        (", 1 in 2 of the attempts", ", 1 in 4 of the attempts", 2 / 3, 1 / 3),
        (", 3 in 4 of the attempts", ", 1 in 4 of the attempts", 3 / 4, 1 / 4),
    ],
)
def test_what_the_sheet_says_of_the_choice(cones: str, players: str, at_cones: float, at_players: float) -> None:
    """Who says nothing has what others leave; where all say something it is weighed, for every try is one of these."""
    play = [f"players underarm throw a ball {CONES}, {PACE} times a minute{cones}"]
    play.append(f"players underarm throw a ball {PLAYERS}, {PACE} times a minute{players}")
    game = Tries(play, OUT, players=2, balls=(1, 1))
    assert np.allclose(game.acting("target"), at_cones * game.acting(), rtol=1e-9)
    assert np.allclose(game.acting("player"), at_players * game.acting(), rtol=1e-9)
