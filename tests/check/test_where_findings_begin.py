"""Where a finding begins and ends: half-way through the round, with a chance to lose, with something that changes."""

from __future__ import annotations

import pytest

from compose.net.net import All, Net
from tests.check.build import Builder
from tests.check.cases import found

LONGEST = 9


def far(left: int, whole: int) -> bool:
    """Whether so many moves of a round are still much of it: at least half of them, and at least three."""
    return 2 * left >= whole and left >= 3


def lost_late(targets: int, fetched_above: int) -> Net:
    """Targets fall one by one; a lost ball is fetched only while more than so many of them stand."""
    play = Builder()
    play.place("ball", 2, 2, "ball")
    play.place("lost ball", 0, 2, "ball")
    play.place("target", targets, targets, "target")
    throw, fetch = play.rule("throw"), play.rule("fetch")
    play.may("hit", play.shift("target", -1, throw), rate=play.rate("ball"))
    play.may("lose", play.move("ball", "lost ball", throw), rate=play.rate("ball"), guard=play.at_least("ball", 2))
    early = play.at_least("target", fetched_above + 1)
    play.may("fetch", play.move("lost ball", "ball", fetch), guard=early, rate=play.rate("lost ball"))
    play.end("all down", None, play.at_most("target", 0), throw)
    return play.net()


def key_lost_late(steps: int, lost_from: int, *, keys: int = 1, loses: bool = True) -> Net:
    """After so many steps whoever has the key wins; north's may be lost while at most so many steps are left."""
    play = Builder("north", "south")
    play.place("steps left", steps, steps)
    play.place("key", keys, 1)
    walk, lose, win = play.rule("walk"), play.rule("lose the key"), play.rule("the key wins")
    play.may("walk", play.shift("steps left", -1, walk))
    if loses:
        play.may("lose", play.shift("key", -1, lose), guard=play.at_most("steps left", lost_from))
    over = play.at_most("steps left", 0)
    for side, has_it in (("north", play.at_least("key", 1)), ("south", play.at_most("key", 0))):
        play.end(f"{side} wins", side, All((over, has_it)), win)
    return play.net()


# Every length of a round with every moment in it.
ROUNDS = [(whole, left) for whole in range(1, LONGEST + 1) for left in range(1, whole + 1)]


@pytest.mark.parametrize(("whole", "left"), ROUNDS)
def test_balls_are_stranded_only_where_the_round_is_far_from_over(whole: int, left: int) -> None:
    """Unless they never are fetched: then a single one is too many."""
    never = left == whole
    assert bool(found(lost_late(whole, left), "C-stranded")) == (never or far(left, whole))


@pytest.mark.parametrize(("whole", "left"), ROUNDS)
def test_a_chance_is_lost_only_where_the_round_is_far_from_over(whole: int, left: int) -> None:
    told = [finding for finding in found(key_lost_late(whole, left), "C-no-return") if "north" in finding.title.lower()]
    assert bool(told) == far(left, whole)
    assert all(dict(finding.numbers)["moves still to play"] == left for finding in told)


@pytest.mark.parametrize("whole", [4, 7])
def test_no_chance_is_lost_that_never_was_or_that_stays(whole: int) -> None:
    never_had = found(key_lost_late(whole, whole, keys=0), "C-no-return")
    never_lost = found(key_lost_late(whole, whole, loses=False), "C-no-return")
    assert not never_had and not never_lost
    assert found(key_lost_late(whole, whole, keys=0), "C-unwinnable")


@pytest.mark.parametrize("comes_off", [True, False])
def test_to_stay_where_one_is_takes_effect_by_being_done(comes_off: bool) -> None:
    """A sentence that leaves everything in its place is idle only where it never comes to it."""
    play = Builder()
    play.place("in", 2, 2, "player")
    play.place("steps", 0, 2)
    stay, walk = play.rule("that player stays"), play.rule("walk")
    play.may("hit", play.move("in", "in", stay), guard=play.at_least("in", 2 if comes_off else 3))
    play.may("walk", play.shift("steps", 1, walk))
    play.end("walked", None, play.at_least("steps", 2), walk)
    assert [finding.place.line for finding in found(play.net(), "C-idle")] == ([] if comes_off else [1])
