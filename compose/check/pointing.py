"""Which sentence a finding points at, and what a state is short of."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.condition import clauses, evaluate
from compose.check.rate import factor
from compose.check.study import Study
from compose.check.words import condition_in_words
from compose.net.net import Net, Place, Rate
from grammar.core.values import AreaId, At, Part
from grammar.span import Span, nowhere

MOST_NAMED = 3


def told_as_one(net: Net, sides: Sequence[str]) -> list[list[str]]:
    """The sides in groups of which one finding speaks: mirrored ones together, every other by itself."""
    groups: dict[str, list[str]] = {}
    for side in sides:
        groups.setdefault("" if side in net.mirrored else side, []).append(side)
    return list(groups.values())


def span_of_last_move(study: Study, state: int) -> Span:
    """The sentence behind the last move of the shortest line to a state."""
    by = int(study.space.by[state])
    rules = study.net.rules
    if by >= 0:
        move = study.net.transitions[by]
        rules = move.rules or tuple(effect.rule for effect in move.effects)
    return rules[0].span if rules else nowhere()


def missing_in(study: Study, state: int) -> str:
    """What keeps every transition from happening in a state: "no balls in the north half"."""
    row = study.table[state : state + 1]
    reasons: list[str] = []
    for transition in study.net.transitions:
        if transition.ticks:  # no time of the clock is missing: it has passed
            continue
        unmet = [c for c in clauses(transition.guard) if not evaluate(c, lambda p: row[:, p], 1)[0]]
        if factor(transition.rate, lambda p: row[:, p], 1)[0] == 0:
            reasons += short_of(transition.rate, [int(count) for count in row[0]], study.net)
        elif unmet:
            reasons.append(f"not so: {condition_in_words(unmet[0], study.net)}")
    told = list(dict.fromkeys(reasons))
    more = f" and {len(told) - MOST_NAMED} more" if len(told) > MOST_NAMED else ""
    return ", ".join(told[:MOST_NAMED]) + more


def short_of(rate: Rate, counts: list[int], net: Net) -> list[str]:
    """The limits and numerators of a rate that are empty, in words."""
    sums = [*rate.limits, *(ratio.numerator for ratio in rate.ratios)]
    return [
        "no " + " or ".join(net.places[place].many for place in places)
        for places in sums
        if places and sum(counts[place] for place in places) == 0
    ]


def percent(part: int, whole: int) -> str:
    """A share as "12 %", never rounded to none or all when it is neither."""
    if 0 < part < whole:
        return f"{min(max(round(100 * part / whole), 1), 99)} %"
    return "100 %" if part else "0 %"


def how_many_like_this(part: int, whole: int) -> str:
    """How common a kind of situation is among all that play can come to (how often it comes is another matter)."""
    return f"Of all situations that play can come to, {percent(part, whole)} are like this."


def teacher_fetches(where: Place) -> str:
    """A sentence by which the teacher fetches the balls that lie in a place."""
    assert isinstance(where.standing, At), "balls lie at a place"
    spot, kind = where.standing.spot, where.kind or "ball"
    balls = where.many.removesuffix(where.one.removeprefix(kind))
    name = spot.of.key if isinstance(spot.of, AreaId) else spot.of.value
    part = "" if spot.part is Part.AT else f"{spot.part.value} "
    return f"the teacher fetches {balls} from {part}the {name}, 6 times a minute"
