"""Reasons why something never comes: what is said to hold instead is looked up state by state, in plain Python."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from compose.check import explore
from compose.check.never import Why, why_never, why_not_fired
from compose.check.seen import everywhere
from compose.check.space import Budget, StateSpace
from compose.check.study import Study
from compose.net.net import All, AnyOf, Comparison, Condition, Net
from compose.telling.english.findings import words
from tests.check.brute import Marking, explore_plainly, rate, true
from tests.check.build import Builder
from tests.check.random_nets import CONDITIONS, nets


def whole(net: Net) -> Study | None:
    """The study of a small space, None of a large one."""
    space = explore(net, Budget(states=300))
    assert isinstance(space, StateSpace)
    return Study(space) if space.complete else None


def told_truly(why: Why, states: list[Marking]) -> bool:
    return why.instead is None or all(true(why.instead, state) for state in states)


@given(net=nets(), asked=CONDITIONS | st.builds(lambda one, other: AnyOf((one, other)), CONDITIONS, CONDITIONS))
@settings(max_examples=200, deadline=None)
def test_what_holds_instead_of_a_condition_holds_everywhere_and_shuts_it_out(net: Net, asked: Condition) -> None:
    study = whole(net)
    if study is None:
        return
    states = explore_plainly(net).states
    why = why_never(everywhere(study), asked, "it does come")
    if any(true(asked, state) for state in states):
        assert why == Why("it does come")
    else:
        assert why.instead is not None and told_truly(why, states)
        for counts in states:
            for changed in (tuple(reversed(counts)), tuple(3 - count for count in counts), (0,) * len(counts)):
                assert not (true(why.instead, changed) and true(asked, changed))


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_what_keeps_a_move_from_happening_is_so_in_all_of_play(net: Net) -> None:
    study = whole(net)
    if study is None:
        return
    plain = explore_plainly(net)
    live = [state for number, state in enumerate(plain.states) if plain.ends[number] < 0]
    for number, transition in enumerate(net.transitions):
        if not study.space.happened[number].fired:
            why = why_not_fired(everywhere(study), transition)
            assert told_truly(why, live)
            if why.instead is None:  # each of its needs is met somewhere
                assert any(true(transition.guard, state) for state in live) or isinstance(transition.guard, All)
                assert not any(true(transition.guard, state) and rate(transition.rate, state) for state in live)


def test_of_several_places_only_those_are_named_that_always_hold_some() -> None:
    play = Builder()
    for name, start in (("open", 2), ("spared", 1)):
        play.place(name, start, 2, "player")
    told = play.rule("out")
    play.may("out", play.shift("open", -1, told), rate=play.rate("open"))
    net = play.net()
    study = whole(net)
    assert study is not None
    why = why_never(everywhere(study), Comparison(((1, 0), (1, 1)), "<=", 0), "")
    assert why.instead == Comparison(((1, 1),), ">=", 1)
    assert words(why.told, net) == "there are always some spared, for nothing changes their number"


def test_what_counts_nothing_is_said_to_come_to_nothing() -> None:
    play = Builder()
    play.place("open", 1, 1, "player")
    study = whole(play.net())
    assert study is not None
    why = why_never(everywhere(study), Comparison((), ">=", 2), "")
    assert words(why.told, study.net) == "what is counted there never comes there"
