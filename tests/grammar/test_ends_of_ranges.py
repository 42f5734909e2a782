"""Numbers that a sheet may just have, and the next ones, which it may not: steps of a track, players of a role."""

from __future__ import annotations

import pytest

from grammar.finding import Finding
from grammar.mistakes.proofread import proofread
from library import kit_categories

SHEET = """\
game Ends
  ages 8 to 12
space
  court 18 m by 9 m, halved across
  drift track: {steps} steps, from otters to dippers
sides
  otters, {otters} to 12 players
  dippers, {dippers} to 12 players
  role keeper: {least} to 12 players of {whose}
kit
  4 foam balls
  2 clouds, like a giant ball
set-up
  clouds on step {step} of the drift track
  2 foam balls in each half
play
  players overarm throw a foam ball at the clouds
when
  a cloud is knocked: it moves 1 step away from the thrower{more}
finish
  a side wins when the other side has a cloud at home
"""


def found(
    *, steps: int = 8, step: int = 4, otters: int = 6, dippers: int = 6, least: int = 1, whose: str = "each side",
    more: str = "",
) -> list[Finding]:  # fmt: skip
    """What is wrong with the sheet that has these numbers."""
    text = SHEET.format(steps=steps, step=step, otters=otters, dippers=dippers, least=least, whose=whose,
                        more=more)  # fmt: skip
    return list(proofread(text.encode(), "ends.rules", kit_categories()))


@pytest.mark.parametrize("steps", [2, 3, 8, 40])
def test_things_stand_between_the_homes_of_a_track(steps: int) -> None:
    for step in {0, 1, 2, steps - 1, steps, steps + 1}:
        told = found(steps=steps, step=step)
        assert [finding.code for finding in told] == ([] if 0 < step < steps else ["G-range"]), step
        assert all(finding.place.line == 14 for finding in told)


@pytest.mark.parametrize(("steps", "possible"), [(1, False), (2, True), (40, True), (41, False)])
def test_how_many_steps_a_track_may_have(steps: int, possible: bool) -> None:
    assert (not any(finding.place.line == 5 for finding in found(steps=steps, step=1))) == possible


@pytest.mark.parametrize("players", [1, 4, 6])
@pytest.mark.parametrize("whose", ["each side", "otters", "dippers"])
def test_a_role_may_take_the_whole_of_the_smallest_side(whose: str, players: int) -> None:
    for least in (players - 1, players, players + 1):
        told = found(otters=players, dippers=players + 2, least=least, whose=whose)
        most = players + 2 if whose == "dippers" else players
        assert [finding.code for finding in told] == ([] if least <= most else ["G-too-many"]), least
        assert all(finding.place.line == 9 for finding in told)


@pytest.mark.parametrize("verb", ["scores", "loses"])
@pytest.mark.parametrize(("points", "possible"), [(0, False), (1, True), (1000, True), (1001, False)])
def test_nobody_scores_nothing(verb: str, points: int, possible: bool) -> None:
    told = [each for each in found(more=f" and the thrower's side {verb} {points} points") if each.code == "G-count"]
    assert [finding.title for finding in told] == ([] if possible else [f"`{points} points` cannot be counted."])
