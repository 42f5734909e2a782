"""Stranded by the rules alone: tokens come to where no line of the net ever uses them or takes them away.

One situation that was seen shows that they come there, and the net that they stay: so it is, however much was not
looked at (a trap of the net: Murata 1989).
"""

from __future__ import annotations

import numpy as np

from compose.check.findings.stranded import Stranding, behind_dead_ends, can_strand, finding_of, likeness
from compose.check.found import Found
from compose.check.study import Study
from compose.net.net import Assign, Effect, Move, Net


def stranded_for_good(study: Study) -> list[Found]:
    """One finding for each kind of such a place, but for those that are told as dead ends."""
    told, net = behind_dead_ends(study), study.net
    found: dict[object, list[Stranding]] = {}
    for number, place in enumerate(net.places):
        if can_strand(net, number) and not _left(net, number):
            there = (study.table[:, number] > place.start) & ~study.ended
            if there.any():
                stranding = Stranding(number, np.flatnonzero(there), sometimes=False)
                found.setdefault(likeness(study, place), []).append(stranding)
    return [finding_of(study, alike) for alike in found.values() if alike[0].place not in told]


def _left(net: Net, place: int) -> bool:
    """Whether anything may use what is in a place, or take it away."""
    used = any(place in limit for transition in net.transitions for limit in transition.rate.limits)
    return used or any(_takes(effect, place) for effect in net.effects)


def _takes(effect: Effect, place: int) -> bool:
    if isinstance(effect, Move):
        return effect.source == place
    return isinstance(effect, Assign) and effect.place == place
