"""The counts of a moment: "north: 5 players in, 2 waiting; south: ..."."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from compose.net.net import RESULT, Net
from compose.net.on_the_way import on_the_way
from compose.telling.english.counts import over_words
from compose.telling.english.nouns import pieces
from compose.telling.sides import does


def state_in_words(net: Net, counts: Sequence[int], only: frozenset[int] | None = None) -> str:
    """The counts of a marking by side, parted by semicolons: "north: 5 players in, 2 waiting; ...".

    Left out: places that are empty and were so at the set-up, places that nothing changes, and, with
    `only`, every other place.
    """
    moved = _touched(net)
    clock = net.schedule.place if net.schedule is not None else None
    shown = [
        number
        for number, place in enumerate(net.places)
        if (number in only if only is not None else number in moved and (counts[number] or place.start))
        and place.token != RESULT
        and number != clock
        and not on_the_way(place)
    ]
    groups = [*_verdicts(net, counts), *_time_over(net, counts)]
    for side in (*net.sides, None):
        own = [number for number in shown if net.places[number].side == side]
        if own:
            told = ", ".join(_listed(net, own, counts, side))
            groups.append(f"{side}: {told}" if side else told)
    if not groups:
        return "nothing changes" if only is not None else "as at the set-up"
    return "; ".join(groups)


def _verdicts(net: Net, counts: Sequence[int]) -> list[str]:
    """Who has won by a rule that ends the round at once."""
    winners = [counts[number] for number, place in enumerate(net.places) if place.token == RESULT and counts[number]]
    return [f"{does(net.sides[winner - 1], 'has', 'have')} won by a rule" for winner in winners]


def _time_over(net: Net, counts: Sequence[int]) -> list[str]:
    """How much of the round is over by the last moment of the clock that has come."""
    if net.schedule is None or not counts[net.schedule.place]:
        return []
    return [over_words(Fraction(net.schedule.times_s[counts[net.schedule.place] - 1]))]


def _listed(net: Net, numbers: list[int], counts: Sequence[int], side: str | None) -> list[str]:
    """The phrases of one side; a noun that the phrase before has as well is not said twice."""
    told: list[str] = []
    before = None
    for number in numbers:
        one, several, there = pieces(net.places[number], net, named=side is None)
        noun = one if counts[number] == 1 else several
        if several == before and there:
            noun = ""
        figure = str(counts[number]) if counts[number] else "no" if noun else "none"
        told.append(" ".join(piece for piece in (figure, noun, there) if piece))
        before = several
    return told


def _touched(net: Net) -> frozenset[int]:
    lists = [t.effects for t in net.transitions] + [r.effects for r in net.reactions]
    touched: set[int] = set()
    for effect in (effect for effects in lists for effect in effects):
        for name in ("source", "target", "place"):
            if hasattr(effect, name):
                touched.add(getattr(effect, name))
    return frozenset(touched)
