"""What a side can force: against a slow fixed point in plain Python, and in the words of a finding."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings

from compose.check import explore
from compose.check.findings.stall import hold_out
from compose.check.forcing import can_force
from compose.check.space import Budget, StateSpace
from compose.check.study import Study
from compose.net.net import Net
from tests.check.build import Builder
from tests.check.cases import found
from tests.check.random_nets import nets


def forced_slowly(space: StateSpace, refusable: list[bool], goal: set[int]) -> set[int]:
    """State by state, over and over, until nothing is added."""
    forced = set(goal)
    while True:
        outside = (state for state in range(space.states) if state not in forced)
        fresh = {state for state in outside if _suits(space, refusable, forced, state)}
        if not fresh:
            return forced
        forced |= fresh


def _suits(space: StateSpace, refusable: list[bool], forced: set[int], state: int) -> bool:
    edges = [edge for edge in space.edges_from(state) if int(space.targets[edge]) != state]
    others = [edge for edge in edges if not refusable[space.transitions[edge]]]
    attempts: dict[int, list[bool]] = {}
    for edge in edges:
        if edge not in others:
            attempt = space.net.transitions[space.transitions[edge]].attempt
            key = [t.attempt for t in space.net.transitions].index(attempt)
            attempts.setdefault(key, []).append(int(space.targets[edge]) in forced)
    harmless = all(int(space.targets[edge]) in forced for edge in others)
    return harmless and (bool(others) or any(all(suits) for suits in attempts.values()))


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_as_a_slow_fixed_point(net: Net) -> None:
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    if not space.complete:
        return
    study = Study(space)
    refusable = [t.side == "north" and not t.forced for t in net.transitions]
    goal = hold_out(study, "north")
    quickly = can_force(study, np.array(refusable), goal)
    assert set(np.flatnonzero(quickly).tolist()) == forced_slowly(space, refusable, set(np.flatnonzero(goal).tolist()))


def bench(way_in_by_others: bool) -> Net:
    """South comes to a place from which only south can finish: on its own account, or only if north lets it."""
    play = Builder("north", "south")
    for name, start in (("open", 1), ("held", 0), ("over", 0)):
        play.place(name, start, 1, "step")
    told = play.rule("come in, then finish")
    opener = "north" if way_in_by_others else "south"
    play.may("come in", play.move("open", "held", told), side=opener, rate=play.rate("open"))
    if way_in_by_others:
        play.may("south finishes early", play.move("open", "over", told), side="south", rate=play.rate("open"))
        play.may("north finishes early", play.move("open", "over", told), side="north", rate=play.rate("open"))
    play.may("finish", play.move("held", "over", told), side="south", rate=play.rate("held"))
    play.end("over", None, play.at_least("over", 1), told)
    return play.net()


def test_told_apart_from_what_needs_luck() -> None:
    [own] = [f for f in found(bench(way_in_by_others=False), "C-stall") if f.title.startswith("South")]
    assert "from the start" in own.hint
    [lucky] = [f for f in found(bench(way_in_by_others=True), "C-stall") if f.title.startswith("South")]
    assert "luck" in lucky.hint and dict(lucky.numbers)["can be forced from the start"] == 0.0


def test_brought_about_against_the_others() -> None:
    """North alone can move play on to where it then holds back; south has nothing to do with it."""
    play = Builder("north", "south")
    for name, start in (("open", 1), ("held", 0), ("over", 0)):
        play.place(name, start, 1, "step")
    told = play.rule("in, then finish")
    play.may("in", play.move("open", "held", told), side="north", rate=play.rate("open"))
    play.may("the teacher calls", play.move("open", "held", told), forced=True, rate=play.rate("open"))
    play.may("finish", play.move("held", "over", told), side="north", rate=play.rate("held"))
    play.end("over", None, play.at_least("over", 1), told)
    space = explore(play.net())
    assert isinstance(space, StateSpace)
    study = Study(space)
    goal = np.array([False, True, False])[np.array([0, 1, 2])]
    refusable = np.array([True, False, True])
    assert can_force(study, refusable, goal).tolist() == [True, True, False]
