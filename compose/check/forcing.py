"""What one side can force: the states from which it gets play into a goal whatever chance and the others do.

An attractor (C. Baier and J.-P. Katoen, Principles of Model Checking, 2008, ch. 7 and 10, on backward
reachability) for races instead of turns: in every state the side may hold back, or keep to one attempt
whose every outcome suits it; all moves that are not its to refuse must suit it as well. A move that
changes nothing is neither here nor there.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.check.graph import ragged
from compose.check.study import Study

Longs = NDArray[np.int64]


def can_force(study: Study, refusable: Bools, goal: Bools) -> Bools:
    """From which states the goal can be forced by a side that may refuse these transitions (transitions,).

    `goal` (states,) holds no ends. Raises OutOfTimeError.
    """
    space, back = study.space, study.back
    moving = study.sources != space.targets
    own = refusable[space.transitions]
    against = np.bincount(study.sources[moving & ~own], minlength=space.states)
    pushed = against > 0
    attempt_of, missing, state_of = _attempts(study, moving & own)
    forced = goal.copy()
    reached = np.flatnonzero(goal)
    while reached.size:
        study.patience.asked("looking for what a side can force")
        edges = back.order[ragged(back.offsets[reached], back.offsets[reached + 1])]
        edges = edges[moving[edges]]
        others, mine = edges[~own[edges]], edges[own[edges]]
        np.subtract.at(against, study.sources[others], 1)
        np.subtract.at(missing, attempt_of[mine], 1)
        ready = np.zeros(space.states, dtype=np.bool_)
        ready[state_of[missing == 0]] = True
        fresh = (against == 0) & (pushed | ready) & ~forced & ~study.ended
        forced |= fresh
        reached = np.flatnonzero(fresh)
    return forced


def _attempts(study: Study, own: Bools) -> tuple[Longs, Longs, Longs]:
    """The side's attempts in each state: the attempt of each edge, how many outcomes each has, its state."""
    net, space = study.net, study.space
    kinds = list(dict.fromkeys(transition.attempt for transition in net.transitions))
    kind = np.array([kinds.index(transition.attempt) for transition in net.transitions], dtype=np.int64)
    edges = np.flatnonzero(own)
    key = study.sources[edges].astype(np.int64) * len(kinds) + kind[space.transitions[edges]]
    keys, number, outcomes = np.unique(key, return_inverse=True, return_counts=True)
    attempt_of = np.full(space.edges, -1, dtype=np.int64)
    attempt_of[edges] = number
    return attempt_of, outcomes.astype(np.int64), keys // max(1, len(kinds))
