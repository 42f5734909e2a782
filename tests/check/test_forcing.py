"""What a side can force: against a slow fixed point in plain Python, and in the words of a finding."""

from __future__ import annotations

import numpy as np
from attrs import evolve
from hypothesis import given, settings

from compose.check import explore
from compose.check.acts import powers_of
from compose.check.findings.stall import hold_out, stall
from compose.check.forcing import can_avoid, can_force
from compose.check.liberties import held_up, liberties_of, what_lets, without
from compose.check.space import Budget, StateSpace
from compose.check.study import Study
from compose.net.net import Net
from tests.check.build import ATTEMPT, Builder
from tests.check.cases import found
from tests.check.random_nets import nets


def side_by_side(space: StateSpace, side: str, state: int) -> tuple[list[int], list[list[int]], list[list[list[int]]]]:
    """The moves of a state: others', what the side may leave undone, what it must do (duty by duty, act by act)."""
    net = space.net
    others: list[int] = []
    left: dict[object, list[int]] = {}
    owed: dict[object, dict[object, list[int]]] = {}
    for edge in space.edges_from(state):
        transition, target = net.transitions[space.transitions[edge]], int(space.targets[edge])
        sums = [ratio.numerator for ratio in transition.rate.ratios] + list(transition.rate.limits)
        balls = next((set(s) for s in sums if s and {net.places[place].token for place in s} == {"ball"}), set())
        if transition.side != side:
            others.append(target)
        elif transition.forced:
            owed.setdefault(frozenset(balls), {}).setdefault(transition.attempt, []).append(target)
        else:
            left.setdefault((transition.attempt, frozenset(balls)), []).append(target)
    return others, list(left.values()), [list(acts.values()) for acts in owed.values()]


def forced_slowly(space: StateSpace, side: str, goal: set[int]) -> set[int]:
    """State by state, over and over, until nothing is added."""
    forced = set(goal)
    while fresh := {s for s in range(space.states) if s not in forced and _suits(space, side, forced, s)}:
        forced |= fresh
    return forced


def _suits(space: StateSpace, side: str, forced: set[int], state: int) -> bool:
    """Whether play is pushed on, and only into what is forced already; to stay is neither here nor there."""
    others, left, owed = side_by_side(space, side, state)
    suits = [act for act in (*left, *(act for acts in owed for act in acts)) if set(act) <= forced | {state}]
    harmless = set(others) <= forced | {state} and all(any(act in suits for act in acts) for acts in owed)
    return harmless and ((set(others) != {state} and bool(others)) or any(set(act) != {state} for act in suits))


def avoided_slowly(space: StateSpace, side: str, bad: set[int]) -> set[int]:
    """Give up states until the side can stay in those that are left, whatever comes."""
    safe = set(range(space.states)) - bad
    while lost := {state for state in safe if not _stays(space, side, safe, state)}:
        safe -= lost
    return safe


def _stays(space: StateSpace, side: str, safe: set[int], state: int) -> bool:
    others, _, owed = side_by_side(space, side, state)
    return set(others) <= safe and all(any(set(act) <= safe for act in acts) for acts in owed)


@given(net=nets())
@settings(max_examples=200, deadline=None)
def test_as_slow_fixed_points(net: Net) -> None:
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    if not space.complete:
        return
    study, powers = Study(space), powers_of(net, "north")
    ended = set(np.flatnonzero(study.ended).tolist())
    assert set(np.flatnonzero(can_avoid(study, powers, study.ended)).tolist()) == avoided_slowly(space, "north", ended)
    goal = set(np.flatnonzero(hold_out(study, "north")).tolist())
    quickly = can_force(study, powers, hold_out(study, "north"))
    assert set(np.flatnonzero(quickly).tolist()) == forced_slowly(space, "north", goal)


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_what_lets_a_side_hold_the_round_up_is_all_of_it_and_no_more(net: Net) -> None:
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    if not space.complete:
        return
    study, powers = Study(space), powers_of(net, "north")
    if not hold_out(study, "north").any():
        return
    blamed = what_lets(study, "north")
    assert not held_up(study, without(powers, blamed)).any()
    for liberty in blamed:
        assert held_up(study, without(powers, [each for each in blamed if each is not liberty])).any()


def test_who_may_leave_three_things_undone_is_blamed_for_the_two_that_the_end_needs() -> None:
    play = Builder("north", "south")
    for name, start in (("far", 1), ("near", 0), ("home", 0), ("flag", 1), ("down", 0)):
        play.place(name, start, 1, "step")
    for goes, there in (("far", "near"), ("near", "home"), ("flag", "down")):
        move = play.move(goes, there, told := play.rule(f"from {goes} to {there}"))
        play.may(told.text, move, side="north", rate=play.rate(goes))
    play.end("over", None, play.at_least("home", 1), told)
    space = explore(play.net())
    assert isinstance(space, StateSpace)
    [told] = stall(study := Study(space))
    assert len(told.witness) == 1, "it is so from the start, and nothing has to come first"
    blamed = what_lets(study, "north")
    assert {each.rule.text for each in blamed if each.rule} == {"from far to near", "from near to home"}


@given(net=nets())
def test_no_line_of_play_to_where_a_side_holds_the_round_up_is_shorter_than_the_one_told(net: Net) -> None:
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    if not space.complete:
        return
    study, far = Study(space), {0: 0}
    for source, target in zip(space.sources().tolist(), space.targets.tolist(), strict=True):
        far.setdefault(target, far[source] + 1)
    held = [np.flatnonzero(hold_out(study, side)).tolist() for side in net.sides]
    for told in stall(study):
        assert len(told.witness) - 1 in {min(far[state] for state in states) for states in held if states}


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_to_be_left_less_never_helps(net: Net) -> None:
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    if not space.complete:
        return
    study, powers = Study(space), powers_of(net, "north")
    held = held_up(study, powers)
    for liberty in liberties_of(net, "north"):
        assert not (held_up(study, without(powers, [liberty])) & ~held).any()


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
    assert "luck" in lucky.hint


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
    goal = np.array([False, True, False])
    assert can_force(study, powers_of(play.net(), "north"), goal).tolist() == [True, True, False]


def pass_or_throw(must: bool, may_pass: bool, mirrored: bool = False) -> Net:
    """One ball; who has it may throw it at the other's only target, or pass it among themselves."""
    play = Builder("north", "south")
    for side, balls in (("north", 1), ("south", 0)):
        play.place(f"{side} ball", balls, 1, "ball", side)
        play.place(f"{side} target", 1, 1, "target", side)
    throw, pass_on, win = play.rule("throw"), play.rule("pass"), play.rule("none standing loses")
    for side, other in (("north", "south"), ("south", "north")):
        ball, rate = play.move(f"{side} ball", f"{other} ball", throw), play.rate(f"{side} ball")
        with_ball = evolve(ATTEMPT, ball="ball")
        acts = {"side": side, "forced": must, "rate": rate, "attempt": with_ball}
        play.may(f"{side} hits", ball, play.shift(f"{other} target", -1, throw), **acts)
        play.may(f"{side} misses", ball, **acts)
        if may_pass:
            play.may(f"{side} passes", rules=(pass_on,), **{**acts, "attempt": evolve(with_ball, aim="mate")})
        play.end(f"{side} wins", side, play.at_most(f"{other} target", 0), win)
    return play.net(mirrored=("north", "south") if mirrored else ())


def test_of_twins_each_is_told_how_it_comes_there() -> None:
    [both] = found(pass_or_throw(must=True, may_pass=True, mirrored=True), "C-stall")
    assert "(and likewise south)" in both.title
    assert "For north: it is so from the start. For south: it takes some luck" in both.hint


def test_a_hold_limit_forces_an_act_and_not_which() -> None:
    assert not found(pass_or_throw(must=True, may_pass=False), "C-stall")
    [north, south] = found(pass_or_throw(must=True, may_pass=True), "C-stall")
    assert "choosing what to do with the ball" in north.title and '"pass"' in north.hint and '"throw"' not in north.hint
    assert north.place.line == 2 and "from the start" in north.hint and "luck" in south.hint


def test_a_hold_limit_is_advised_only_where_none_stands() -> None:
    [north, _] = found(pass_or_throw(must=False, may_pass=False), "C-stall")
    assert "held at most" in north.hint and "not playing on" in north.title
    [north, _] = found(pass_or_throw(must=True, may_pass=True), "C-stall")
    assert "held at most" not in north.hint
    [north, _] = found(pass_or_throw(must=False, may_pass=True), "C-stall")
    assert "held at most" in north.hint and '"pass"' in north.hint, "both have to go"
