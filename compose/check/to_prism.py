"""Net → text in the PRISM language, so that a probabilistic model checker can check us.

Two forms: by places (one variable for each, one command for each transition), and by states (one variable
that numbers the explored states), which a net needs in which something follows at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from compose.check.explore import explore
from compose.check.prism_expressions import after, condition, rate_factor, variable_names
from compose.check.space import Budget, StateSpace
from compose.net.net import Net
from grammar.finding import Finding, Outcome, Severity
from grammar.frozen import frozen
from grammar.span import nowhere

MOST_NUMBERED = 2_000  # states in the form by states: a text of that many commands is still read in a second
OVER = "over"


@frozen
class Comments:
    """What stands beside places, transitions and ends for people to read: one text for each, or none at all."""

    places: tuple[str, ...] = ()
    transitions: tuple[str, ...] = ()
    ends: tuple[str, ...] = ()


BARE = Comments()


def to_prism(net: Net, constants: Sequence[float], comments: Comments = BARE) -> Outcome[str]:
    """A continuous-time model of the net; `constants` are events a minute of each transition at factor 1.

    Labels: "over" where play has ended, "end_1" ... where the first end that holds is that one; the reward
    structure "minutes" counts time. A finding where the net needs more than `MOST_NUMBERED` numbered states, or a
    clock.
    """
    if net.schedule is not None:
        title = f"{net.title} cannot be written in the PRISM language: the clock changes something while play goes on."
        hint = "There everything takes a time of chance. Leave out what the sheet says of moments of the clock."
        return Outcome(None, (Finding("C-prism-clock", Severity.ERROR, title, nowhere(), hint),))
    if not net.reactions:
        return Outcome(prism_by_places(net, constants, comments))
    space = explore(net, Budget(states=MOST_NUMBERED))
    if isinstance(space, StateSpace) and space.complete and space.states <= MOST_NUMBERED:
        return Outcome(prism_by_states(space, constants, comments))
    title = f"{net.title} cannot be written in the PRISM language: it needs more than {MOST_NUMBERED:,} states."
    hint = "Something in this game follows at once, which needs every state by itself. Take fewer players or balls."
    return Outcome(None, (Finding("C-prism-size", Severity.ERROR, title, nowhere(), hint),))


def prism_by_places(net: Net, constants: Sequence[float], comments: Comments = BARE) -> str:
    """The model with a variable for each place; the net must have no reactions."""
    names = variable_names(net)
    module, labels = _module(net, constants, names, comments), _labels_by_places(net, names, comments)
    return "\n".join([*_head(net), *module, *labels, *_rewards(), ""])


def prism_by_states(space: StateSpace, constants: Sequence[float], comments: Comments = BARE) -> str:
    """The model with one variable that numbers the states of a complete space."""
    module, labels = _numbered(space, constants), _labels_by_states(space, comments)
    return "\n".join([*_head(space.net), *module, *labels, *_rewards(), ""])


def _head(net: Net) -> Iterator[str]:
    yield "ctmc"
    yield ""
    yield f"// {net.title}. Time is in minutes."
    if net.bell is not None:
        yield f"// The clock ends the round after {net.bell.after_s / 60:g} minutes."
    yield ""


def _rewards() -> tuple[str, ...]:
    return ("", 'rewards "minutes"', "  true : 1;", "endrewards")


def _module(net: Net, constants: Sequence[float], names: tuple[str, ...], comments: Comments) -> Iterator[str]:
    yield f"formula {OVER} = {' | '.join(condition(end.guard, names) for end in net.ends) or 'false'};"
    yield ""
    yield "module play"
    for number, (place, name) in enumerate(zip(net.places, names, strict=True)):
        if place.capacity:
            yield f"  {name} : [0..{place.capacity}] init {place.start};{_beside(comments.places, number)}"
    yield ""
    for number, (transition, constant) in enumerate(zip(net.transitions, constants, strict=True)):
        if constant > 0:
            factor, positive = rate_factor(transition.rate, names)
            updates = after(transition.effects, net.places, names)
            told = " & ".join(f"({names[place]}'={count})" for place, count in updates.items()) or "true"
            guard = f"!{OVER} & {condition(transition.guard, names)} & {positive}"
            if comments.transitions:
                yield f" {_beside(comments.transitions, number)}"
            yield f"  <> {guard} -> {float(constant)!r} * {factor} : {told};"
    yield "endmodule"
    yield ""


def _beside(texts: tuple[str, ...], number: int) -> str:
    return f" // {texts[number]}" if texts else ""


def _labels_by_places(net: Net, names: tuple[str, ...], comments: Comments) -> Iterator[str]:
    yield f'label "{OVER}" = {OVER};'
    earlier: list[str] = []
    for number, end in enumerate(net.ends):
        here = condition(end.guard, names)
        only = " & ".join([here, *(f"!{each}" for each in earlier)])
        yield f'label "end_{number + 1}" = {only};{_beside(comments.ends, number)}'
        earlier.append(here)


def _numbered(space: StateSpace, constants: Sequence[float]) -> Iterator[str]:
    rates = space.factors * np.asarray(constants, dtype=np.float64)[space.transitions]
    yield "module play"
    yield f"  state : [0..{max(space.states - 1, 1)}] init 0;"
    yield ""
    for state in range(space.states):
        told = [
            f"{rates[edge]!r} : (state'={space.targets[edge]})" for edge in space.edges_from(state) if rates[edge] > 0
        ]
        if told:
            yield f"  <> state={state} -> {' + '.join(told)};"
    yield "endmodule"
    yield ""


def _labels_by_states(space: StateSpace, comments: Comments) -> Iterator[str]:
    yield f'label "{OVER}" = {_one_of(np.flatnonzero(space.ended()))};'
    for number in range(len(space.net.ends)):
        here = _one_of(np.flatnonzero(space.end_of == number))
        yield f'label "end_{number + 1}" = {here};{_beside(comments.ends, number)}'


def _one_of(states: Sequence[int] | np.ndarray[tuple[int, ...], np.dtype[np.int64]]) -> str:
    return " | ".join(f"state={state}" for state in states) or "false"
