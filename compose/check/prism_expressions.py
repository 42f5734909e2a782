"""Pieces of the PRISM language: names of places, conditions, rates, and what effects do to each place.

Language: M. Kwiatkowska, G. Norman, D. Parker, "PRISM 4.0: verification of probabilistic real-time
systems", CAV 2011, LNCS 6806, and the tool's manual, sections on variables, expressions and commands.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping

from compose.net.net import All, Assign, Comparison, Condition, Effect, Move, Net, Not, Place, Rate, Shift

_RELATION = {"<=": "<=", ">=": ">=", "==": "="}


def variable_names(net: Net) -> tuple[str, ...]:
    """An identifier for each place: "ball_foam_ball_half_north". A place that holds nothing ever is the number 0."""
    names: list[str] = []
    for number, place in enumerate(net.places):
        plain = unicodedata.normalize("NFKD", place.name).encode("ascii", "ignore").decode()
        word = re.sub(r"\W+", "_", plain).strip("_")
        fits = word[:1].isalpha() and word not in names and "_" in word
        names.append("0" if place.capacity == 0 else word if fits else f"place_{number}")
    return tuple(names)


def condition(given: Condition, names: tuple[str, ...]) -> str:
    """A condition as a Boolean expression in brackets."""
    if isinstance(given, Comparison):
        terms = [names[place] if times == 1 else f"{times}*{names[place]}" for times, place in given.terms]
        return f"({added(terms)}{_RELATION[given.relation]}{given.bound})"
    if isinstance(given, Not):
        return f"(!{condition(given.part, names)})"
    parts = [condition(part, names) for part in given.parts]
    if isinstance(given, All):
        return f"({' & '.join(parts)})" if parts else "true"
    return f"({' | '.join(parts)})" if parts else "false"


def added(terms: Iterable[str]) -> str:
    """A sum; an empty one is 0."""
    return "+".join(terms) or "0"


def bracketed(places: tuple[int, ...], names: tuple[str, ...]) -> str:
    """The sum of some places as one operand."""
    return f"({added(names[place] for place in places)})" if len(places) != 1 else names[places[0]]


def rate_factor(rate: Rate, names: tuple[str, ...]) -> tuple[str, str]:
    """How many act at once, and where that is more than nothing (a command of rate 0 is no command)."""
    sums = [bracketed(limit, names) for limit in rate.limits]
    if rate.turns is not None:
        number, busy = rate.turns
        sums.append(f"max({number}-{bracketed(busy, names)}, 0)" if busy else f"{number}")
    factors = [sums[0] if len(sums) == 1 else f"min({', '.join(sums)})"] if sums else []
    positive = [f"{each}>0" for each in sums]
    for ratio in rate.ratios:
        above, below = bracketed(ratio.numerator, names), ratio.denominator
        if isinstance(below, int):
            factors.append(f"{above}/{below}" if below else "0")
            positive.append(f"{above}>0" if below else "false")
        else:
            whole = bracketed(below, names)
            factors.append(f"{above}/max({whole}, 1)")  # some readers divide before they look at the guard
            positive += [f"{above}>0", f"{whole}>0"]
    return " * ".join(factors) or "1", " & ".join(dict.fromkeys(positive)) or "true"


def after(effects: tuple[Effect, ...], places: tuple[Place, ...], names: tuple[str, ...]) -> Mapping[int, str]:
    """The count of every place that effects touch, carried out in their order, in terms of the counts before."""
    now: dict[int, str] = {}

    def count(place: int) -> str:
        return now.get(place, names[place])

    for effect in effects:
        if isinstance(effect, Move) and effect.source != effect.target:
            filled = count(effect.target)
            room = f"{places[effect.target].capacity}-{filled if filled.isidentifier() else f'({filled})'}"
            wanted = [count(effect.source), room] + ([] if effect.amount is None else [str(effect.amount)])
            wanted += [f"max({each.most}-({added(map(count, each.places))}), 0)" for each in effect.rooms]
            taken = f"min({', '.join(wanted)})"
            now[effect.source], now[effect.target] = (
                f"{count(effect.source)}-{taken}",
                f"{count(effect.target)}+{taken}",
            )
        elif isinstance(effect, Shift):
            now[effect.place] = f"min(max({count(effect.place)}{effect.by:+d}, 0), {places[effect.place].capacity})"
        elif isinstance(effect, Assign):
            now[effect.place] = str(min(max(effect.value, 0), places[effect.place].capacity))
    return {place: told for place, told in now.items() if places[place].capacity}
