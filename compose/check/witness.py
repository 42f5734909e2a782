"""Shortest lines of play, step by step in the words of the rules."""

from __future__ import annotations

from compose.check.space import StateSpace, markings
from compose.check.words import state_in_words
from grammar.finding import Step

SET_UP = "the round starts"


def line_of_play(space: StateSpace, state: int) -> tuple[Step, ...]:
    """A shortest line from the set-up to a state: the set-up and the last step tell all counts."""
    states, moves = [state], []
    while space.parents[states[-1]] >= 0:
        moves.append(int(space.by[states[-1]]))
        states.append(int(space.parents[states[-1]]))
    states.reverse()
    moves.reverse()
    first = Step(SET_UP, state_in_words(space.net, counts_of(space, states[0])))
    return (first, *_steps(space, states, moves, whole_last=True))


def steps_along(space: StateSpace, start: int, edges: list[int]) -> tuple[Step, ...]:
    """The steps of a walk along edges from a state, each with the counts that changed."""
    states = [start, *(int(space.targets[edge]) for edge in edges)]
    moves = [int(space.transitions[edge]) for edge in edges]
    return tuple(_steps(space, states, moves, whole_last=False))


def counts_of(space: StateSpace, state: int) -> tuple[int, ...]:
    """The marking of one state."""
    return tuple(int(count) for count in markings(space, [state])[0])


def _steps(space: StateSpace, states: list[int], moves: list[int], whole_last: bool) -> list[Step]:
    counts = [counts_of(space, state) for state in states]
    steps = []
    for number, move in enumerate(moves):
        before, after = counts[number], counts[number + 1]
        changed = frozenset(place for place in range(len(after)) if before[place] != after[place])
        last = whole_last and number == len(moves) - 1
        told = state_in_words(space.net, after, None if last else changed)
        steps.append(Step(space.net.transitions[move].words, told, move))
    return steps
