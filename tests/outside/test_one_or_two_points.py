"""Shots that count one or two points by how they came: the wait for so many points is that of a compound process.

Goals come at rate r, of which a share b counts one point and the rest two. For a first side to n points that alone can
score, the mean number of goals g(n) = 1 + b g(n - 1) + (1 - b) g(n - 2), with g(m) = 0 for m <= 0 (renewal equation:
W. Feller, An Introduction to Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. XIII; from
memory).
"""

from __future__ import annotations

import pytest

from tests.outside.whole_way import Played

GOALS = """
game Goals
space
  court 10 m by 6 m, halved across
sides
  north, 1 player
  south, 1 player
kit
  1 soft ball, like a foam ball
  1 gate for south, like a hanging hoop
set-up
  1 soft ball in the half of north
  gate behind the back line of south
play
  players stay in their half
  north players kick a soft ball through the gate of south, 1 in 2 succeed, 6 times a minute{bounce}
  a ball rests in the half it came from
  {play}
when
  {when}
finish
  the first side to {points} points wins
"""
ONE_OR_TWO = """a ball goes through a gate: the kicker's side scores 2 points
  a ball goes through a gate after a bounce: the kicker's side scores 1 point"""


def mean_goals(points: int, share: float) -> float:
    """The renewal equation."""
    if points <= 0:
        return 0.0
    return 1 + share * mean_goals(points - 1, share) + (1 - share) * mean_goals(points - 2, share)


@pytest.mark.parametrize(("points", "fourths"), [(1, 1), (3, 1), (5, 3), (4, 0), (4, 4)])
def test_one_point_after_a_bounce_and_two_without(points: int, fourths: int) -> None:
    text = GOALS.format(bounce=f", {fourths} in 4 bounce first", play='"Kick low."', when=ONE_OR_TWO, points=points)
    game = Played(text, {"north": 1, "south": 1})
    assert game.absorbed.mean == pytest.approx(mean_goals(points, fourths / 4) / 3, rel=1e-9)


def test_what_does_not_count_is_missed() -> None:
    """Where no figure says how many succeed, the share that bounced is taken off; the assumed share is a fifth."""
    point = "a ball goes through a gate: the kicker's side scores 1 point"
    text = GOALS.replace(", 1 in 2 succeed", "")
    plays = ('"Kick low."', "a hit after a bounce does not count")
    texts = [text.format(bounce="", play=play, when=point, points=1) for play in plays]
    counts, direct = (Played(each, {"north": 1, "south": 1}) for each in texts)
    assert direct.absorbed.mean == pytest.approx(counts.absorbed.mean / (1 - 0.20), rel=1e-9)


@pytest.mark.parametrize("fourths", [1, 3])
def test_where_only_what_bounced_counts_it_is_the_share_that_is_said(fourths: int) -> None:
    """Of shots of which none need bounce so many count as bounce first: a goal takes 4 / fourths times as long."""
    point = "a ball goes through a gate: the kicker's side scores 1 point"
    text = GOALS.replace(", 1 in 2 succeed", "")
    said = f", {fourths} in 4 bounce first"
    every = Played(text.format(bounce="", play='"Kick low."', when=point, points=3), {"north": 1, "south": 1})
    bounced = text.format(bounce=said, play="a ball counts only after a bounce", when=point, points=3)
    some = Played(bounced, {"north": 1, "south": 1})
    assert some.absorbed.mean == pytest.approx(every.absorbed.mean * 4 / fourths, rel=1e-9)
