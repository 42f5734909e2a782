"""Random small nets for Hypothesis."""

from __future__ import annotations

from attrs import evolve
from hypothesis import strategies as st

from compose.net.net import (
    All,
    AnyOf,
    Assign,
    Comparison,
    Condition,
    Effect,
    End,
    Move,
    Net,
    Not,
    Rate,
    Ratio,
    Reaction,
    Room,
    Shift,
    Transition,
)
from grammar.core.values import Presence
from tests.check.build import ATTEMPT, rule
from tests.check.worded import Named, worded

OTHER_ATTEMPT = evolve(ATTEMPT, name="try something else")

PLACES = 4
RULES = [rule(f"rule {number}", number) for number in range(1, 4)]
number_of_place = st.integers(0, PLACES - 1)
rules = st.sampled_from(RULES)


def comparisons() -> st.SearchStrategy[Comparison]:
    terms = st.lists(st.tuples(st.sampled_from((1, 1, -1, 2)), number_of_place), min_size=1, max_size=2)
    return st.builds(Comparison, terms.map(tuple), st.sampled_from(("<=", "==", ">=")), st.integers(-1, 3))


def conditions() -> st.SearchStrategy[Condition]:
    return st.recursive(
        comparisons(),
        lambda inner: (
            st.builds(Not, inner)
            | st.builds(All, st.lists(inner, max_size=2).map(tuple))
            | st.builds(AnyOf, st.lists(inner, max_size=2).map(tuple))
        ),
        max_leaves=3,
    )


def effects() -> st.SearchStrategy[tuple[Effect, ...]]:
    amount = st.sampled_from((1, 1, 1, 2, None))
    move = st.builds(Move, number_of_place, number_of_place, amount, rules, st.just(()) | st.just(()) | rooms())
    shift = st.builds(Shift, number_of_place, st.sampled_from((-1, 1, 2)), rules)
    assign = st.builds(Assign, number_of_place, st.integers(0, 1), rules)
    return st.lists(move | move | move | shift | assign, max_size=3).map(tuple)


def rooms() -> st.SearchStrategy[tuple[Room, ...]]:
    several = st.lists(number_of_place, min_size=1, max_size=2, unique=True).map(tuple)
    return st.lists(st.builds(Room, several, st.integers(0, 3)), max_size=2).map(tuple)


def fixed_effects() -> st.SearchStrategy[tuple[Effect, ...]]:
    """Such as nearly all of a game's: so many tokens from one place to another."""
    move = st.builds(Move, number_of_place, number_of_place, st.integers(1, 2), rules, rooms())
    return st.lists(move, min_size=1, max_size=2).map(tuple)


def rates() -> st.SearchStrategy[Rate]:
    places = st.lists(number_of_place, min_size=1, max_size=2).map(tuple)
    ratio = st.builds(Ratio, places, st.integers(1, 3) | places)
    return st.builds(Rate, st.lists(places, max_size=2).map(tuple), st.lists(ratio, max_size=1).map(tuple))


def transitions(done: st.SearchStrategy[tuple[Effect, ...]]) -> st.SearchStrategy[Transition]:
    return st.builds(
        lambda side, forced, attempt, rate, guard, done: Transition(
            worded("a move"), side, forced, attempt, "always", rate, guard, done, tuple(RULES[:1])
        ),
        st.sampled_from(("north", "south", None)),
        st.booleans(),
        st.sampled_from((ATTEMPT, OTHER_ATTEMPT)),
        rates(),
        conditions() | st.just(All()),
        done,
    )


CONDITIONS = conditions()
TRANSITIONS = st.lists(transitions(effects()), min_size=1, max_size=4).map(tuple)
FIXED = st.lists(transitions(fixed_effects()), min_size=1, max_size=4).map(tuple)
REACTIONS = st.lists(
    st.builds(lambda guard, done: Reaction(worded("at once"), guard, done, ()), CONDITIONS, effects()), max_size=2
).map(tuple)
ENDS = st.lists(
    st.builds(End, st.just(worded("an end")), st.sampled_from(("north", "south", None)), CONDITIONS, rules),
    max_size=2,
).map(tuple)
TOKENS = st.sampled_from(("ball", "player", "points"))


@st.composite
def nets(draw: st.DrawFn, fixed: bool = False) -> Net:
    """Four places of up to three tokens, a few transitions, reactions and ends; `fixed`: of fixed effects alone."""
    places = []
    for number in range(PLACES):
        capacity = draw(st.integers(1, 3))
        start = draw(st.integers(0, capacity))
        token = draw(TOKENS)
        standing = Presence.PLAYING if token == "player" else None
        name = f"p{number}"
        places.append(Named(name, token, capacity, start, standing=standing, one=name, many=f"{name}s"))
    return Net(
        "random (invented)",
        ("north", "south"),
        tuple(places),
        draw(FIXED if fixed else TRANSITIONS),
        () if fixed else draw(REACTIONS),
        draw(ENDS),
        None,
        tuple(RULES),
    )
