"""Whether pupils come back faster than they are sent to wait, so that a side is hardly ever all out."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

import library
from compose.check.condition import clauses
from compose.check.enabled import Enabling
from compose.check.rate import Floats
from compose.forecast.chances.chances import chances
from compose.forecast.standings import PLAYING, WAITING, standing_of
from compose.net.net import Comparison, End, Move, Net
from grammar.frozen import frozen
from library import Norms


@frozen
class Freed:
    """With half of a side waiting and all balls as at the set-up: how many a minute are sent to wait, and come back."""

    side: str
    end: End
    waiting: int
    of: int
    sent: float
    back: float


def freed_faster(net: Net, norms: Norms) -> Iterator[Freed]:
    """The ends that ask for a side with nobody left playing, though half of it would fill up again."""
    standing = standing_of(net)
    constants = chances(net, norms, library.kit_names())
    for end in net.ends:
        playing = _emptied(end, standing)
        sides = {net.places[place].side for place in playing}
        waiting = [p for p, kind in standing.items() if kind == WAITING and net.places[p].side in sides]
        if len(sides) == 1 and waiting:
            side = str(sides.pop())
            marking, moved, of = _half_waiting(net, playing, waiting)
            sent, back = (_flow(net, constants, marking, *way) for way in ((playing, waiting), (waiting, playing)))
            if moved and back >= sent:
                yield Freed(side, end, moved, of, sent, back)


def _emptied(end: End, standing: dict[int, str]) -> list[int]:
    """The places of players at play of which an end asks that nobody is there."""
    parts = clauses(end.guard)
    if len(parts) != 1 or not isinstance(parts[0], Comparison):
        return []
    claim = parts[0]
    none = claim.bound == 0 and claim.relation in ("<=", "==") and all(times == 1 for times, _ in claim.terms)
    places = [place for _, place in claim.terms]
    return places if none and all(standing.get(place) == PLAYING for place in places) else []


def _half_waiting(net: Net, playing: list[int], waiting: list[int]) -> tuple[list[int], int, int]:
    """The marking, how many wait and of how many."""
    marking = list(net.start())
    fullest = max(playing, key=lambda place: marking[place])
    kind = net.places[fullest].kind
    to = next((place for place in waiting if net.places[place].kind == kind), waiting[0])
    of = sum(marking[place] for place in playing)
    moved = min(marking[fullest], of // 2, net.places[to].capacity - marking[to])
    marking[fullest] -= moved
    marking[to] += moved
    return marking, moved, of


def _flow(net: Net, constants: Floats, marking: list[int], source: list[int], target: list[int]) -> float:
    """How many a minute go from one kind of place to the other."""
    enabling = Enabling(net)
    enabled, factors = enabling.of(np.array([marking], dtype=np.int32))
    total = 0.0
    for number, transition in enumerate(net.transitions):
        for effect in transition.effects if enabled[number, 0] else ():
            if isinstance(effect, Move) and effect.source in source and effect.target in target:
                tokens = marking[effect.source] if effect.amount is None else min(effect.amount, marking[effect.source])
                total += float(factors[enabling.rate_of[number], 0] * constants[number]) * tokens
    return total
