"""Whoever is touched waits until a mate frees them: small chains solved by hand.

With n of two frozen a wolf freezes the next with rate a, and while one is frozen the other frees them with rate b. The
mean times until both are frozen solve T0 = 1/a + T1 and T1 = 1/(a + b) + b/(a + b) T0, so that T0 = (2a + b) / a^2
(first steps of a birth and death chain: S. Karlin and H. M. Taylor, A First Course in Stochastic Processes, 2nd ed.,
Academic Press 1975, ch. 4; from memory).
"""

from __future__ import annotations

import pytest

from tests.outside.whole_way import Played

FREEZING = """
game Freezing
space
  court 10 m by 6 m, in one piece
  {bench}
sides
  sheep, {sheep} players
  wolves, 1 player
  {role}
play
  wolves touch sheep, 1 in 2 succeed, 6 times a minute
  {frees}, 2 times a minute
when
  a sheep is touched: that sheep goes to {there}
finish
  wolves win when sheep have at most {left} players in
"""


BESIDE, BEHIND = "ice bench: beside {what}", "ice bench: behind each back line"


@pytest.mark.parametrize(
    ("bench", "there", "frees"),
    [
        (BESIDE.format(what="the court"), "the ice bench", "sheep free the first on the ice bench"),
        (BESIDE.format(what="each half"), "the ice bench", "sheep free the first on their ice bench"),
        (BEHIND, "the ice bench of wolves", "sheep free the first on the ice bench of wolves"),
        (BEHIND, "the ice bench of the other side", "players free the last on the ice bench of the other side"),
    ],
)
def test_the_last_to_be_free(bench: str, there: str, frees: str) -> None:
    text = FREEZING.format(bench=bench, there=there, frees=frees, sheep=2, role="", left=0)
    game = Played(text, {"sheep": 2, "wolves": 1})
    a, b = 3.0, 2.0
    assert game.space.states == 3
    assert game.wins("wolves") == pytest.approx(1)
    assert game.absorbed.mean == pytest.approx((2 * a + b) / a**2, rel=1e-9)


def test_a_shepherd_whom_nobody_touches() -> None:
    """The shepherd alone frees; two sheep besides, and the same equations."""
    text = FREEZING.format(
        bench="ice bench: beside the court",
        there="the ice bench",
        frees="shepherds free the first on the ice bench",
        sheep=3,
        role="role shepherd: 1 player of sheep, nobody aims at them",
        left=1,
    )
    game = Played(text, {"sheep": 3, "wolves": 1})
    a, b = 3.0, 2.0
    assert game.absorbed.mean == pytest.approx((2 * a + b) / a**2, rel=1e-9)
