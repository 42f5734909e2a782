"""Shortest lines of play, step by step."""

from __future__ import annotations

from compose.check.found import Stepped
from compose.check.space import StateSpace, markings


def line_of_play(space: StateSpace, state: int) -> tuple[Stepped, ...]:
    """A shortest line from the set-up to a state: the set-up and the last step show all counts."""
    states, moves = [state], []
    while space.parents[states[-1]] >= 0:
        moves.append(int(space.by[states[-1]]))
        states.append(int(space.parents[states[-1]]))
    states.reverse()
    moves.reverse()
    start = counts_of(space, states[0])
    return (Stepped(-1, start, start), *_steps(space, states, moves, whole_last=True))


def steps_along(space: StateSpace, start: int, edges: list[int]) -> tuple[Stepped, ...]:
    """The steps of a walk along edges from a state, each with the counts that changed."""
    states = [start, *(int(space.targets[edge]) for edge in edges)]
    moves = [int(space.transitions[edge]) for edge in edges]
    return tuple(_steps(space, states, moves, whole_last=False))


def counts_of(space: StateSpace, state: int) -> tuple[int, ...]:
    """The marking of one state."""
    return tuple(int(count) for count in markings(space, [state])[0])


def _steps(space: StateSpace, states: list[int], moves: list[int], whole_last: bool) -> list[Stepped]:
    counts = [counts_of(space, state) for state in states]
    steps = []
    for number, move in enumerate(moves):
        before, after = counts[number], counts[number + 1]
        changed = frozenset(place for place in range(len(after)) if before[place] != after[place])
        last = whole_last and number == len(moves) - 1
        steps.append(Stepped(move, before, after, None if last else changed))
    return steps
