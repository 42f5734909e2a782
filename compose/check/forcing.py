"""What one side can bring about whatever chance and the others do: get play into a goal, or keep it out of one.

Attractors (C. Baier and J.-P. Katoen, Principles of Model Checking, 2008, ch. 7 and 10, on backward
reachability) for races instead of turns: in every state the side may hold back, or keep to one attempt
whose every outcome suits it; all moves that are not its to choose must suit it as well.
"""

from __future__ import annotations

import numpy as np

from compose.check.acts import NONE, Longs, Powers, acts_of
from compose.check.condition import Bools
from compose.check.graph import ragged
from compose.check.study import Study


def can_avoid(study: Study, powers: Powers, bad: Bools) -> Bools:
    """From which states the side keeps play out of the bad states (states,) for ever. Raises StoppedError."""
    acts = acts_of(study.space, study.sources, powers, with_left=False)
    left = np.bincount(acts.duty_of[acts.duty_of != NONE], minlength=len(acts.owed_in))
    sound = acts.duty_of != NONE
    lost, reached = bad.copy(), np.flatnonzero(bad)
    while reached.size:
        study.patience.asked("looking for what a side can keep play out of")
        edges = _into(study, reached)
        fresh = np.zeros(study.space.states, dtype=np.bool_)
        fresh[study.sources[edges[acts.open[edges]]]] = True
        spoiled = _attempts(acts.attempt_of[edges], sound)
        sound[spoiled] = False
        np.subtract.at(left, acts.duty_of[spoiled], 1)
        owed = acts.duty_of[spoiled]
        fresh[acts.owed_in[owed[left[owed] == 0]]] = True
        fresh &= ~lost
        lost |= fresh
        reached = np.flatnonzero(fresh)
    return ~lost


def can_force(study: Study, powers: Powers, goal: Bools) -> Bools:
    """From which states the side gets play into the goal (states,), which holds no ends. Raises StoppedError.

    A move that changes nothing is neither here nor there: it forces nothing, and it does for a duty.
    """
    states = study.space.states
    acts = acts_of(study.space, study.sources, powers)
    moving = np.not_equal(study.sources, study.space.targets)
    against = np.bincount(study.sources[acts.open & moving], minlength=states)
    missing = np.bincount(acts.attempt_of[moving & (acts.attempt_of != NONE)], minlength=len(acts.state_of))
    unmet, met = np.bincount(acts.owed_in, minlength=states), np.zeros(len(acts.owed_in), dtype=np.bool_)
    pushed = against > 0
    waiting = np.ones(len(acts.state_of), dtype=np.bool_)
    idle = missing == 0
    forced, reached = goal.copy(), np.flatnonzero(goal)
    while reached.size:
        study.patience.asked("looking for what a side can force")
        edges = _into(study, reached)
        edges = edges[moving[edges]]
        np.subtract.at(against, study.sources[edges[acts.open[edges]]], 1)
        tried = acts.attempt_of[edges]
        np.subtract.at(missing, tried[tried != NONE], 1)
        ready = np.flatnonzero(waiting & (missing == 0))
        waiting[ready] = False
        pushed[acts.state_of[ready[~idle[ready]]]] = True
        owed = np.unique(acts.duty_of[ready[acts.duty_of[ready] != NONE]])
        np.subtract.at(unmet, acts.owed_in[owed[~met[owed]]], 1)
        met[owed] = True
        fresh = (against == 0) & (unmet == 0) & pushed & ~forced & ~study.ended
        forced |= fresh
        reached = np.flatnonzero(fresh)
    return forced


def _into(study: Study, states: Longs) -> Longs:
    """The moves that lead into these states."""
    back = study.back
    edges: Longs = back.order[ragged(back.offsets[states], back.offsets[states + 1])]
    return edges


def _attempts(tried: Longs, sound: Bools) -> Longs:
    """Each of the attempts once that were sound so far."""
    once = np.unique(tried[tried != NONE])
    left: Longs = once[sound[once]]
    return left
