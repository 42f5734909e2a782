"""States and conditions told in words."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from compose.net.lower.say_counts import time_words
from compose.net.net import All, AnyOf, Comparison, Condition, Net, Not, Place
from compose.net.on_the_way import on_the_way
from compose.net.side_words import does, is_plural
from grammar.words import listing, player_of

RESULT = "result"  # the token of the place in which a rule notes at once who has won; never told as a count
SMALL_WORDS = frozenset(["in", "on", "at", "of", "by", "behind", "out", "with", "for", "to", "the", "a", "an"])


def likewise(others: Sequence[str], lead: str = "") -> str:
    """Such as " (and likewise the pikes)", for sides of which the same is true; nothing for none."""
    return f" (and likewise {lead}{listing(subject(each) for each in others)})" if others else ""


def subject(side: str) -> str:
    """A side in a sentence: "north", "the herons"."""
    return does(side, "", "").strip()


def sentence(words: str) -> str:
    """The words with a capital letter."""
    return words[:1].upper() + words[1:]


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
    return [f"{time_words(Fraction(net.schedule.times_s[counts[net.schedule.place] - 1]))} are over"]


def _listed(net: Net, numbers: list[int], counts: Sequence[int], side: str | None) -> list[str]:
    """The phrases of one side; words that open the phrase before as well are not said twice."""
    told: list[str] = []
    before: list[str] = []
    for number in numbers:
        place, count = net.places[number], counts[number]
        words = _without(side, place.one if count == 1 else place.many)
        many = _without(side, place.many)
        shared = _same_noun(before, many) if len(words) > 1 else 0
        nameless = shared > 0 or words[0] in SMALL_WORDS
        number_word = str(count) if count else "none" if nameless else "no"
        told.append(" ".join([number_word, *words[shared:]]))
        before = many
    return told


def _same_noun(before: list[str], words: list[str]) -> int:
    """How many words open both phrases, up to the first small word ("foam balls | in the half")."""
    shared = 0
    while shared < min(len(before), len(words) - 1):
        if before[shared] != words[shared] or words[shared] in SMALL_WORDS:
            break
        shared += 1
    return shared


def _without(side: str | None, phrase: str) -> list[str]:
    """The words of a phrase without the name of the side that opens the line: "stones (of the herons) up"."""
    if side is None:
        return phrase.split()
    padded = f" {phrase} ".replace(f" of the {side} ", " ").replace(f" of {side} ", " ").replace(f" {side} ", " ")
    words = padded.split()
    if is_plural(side) and words[:1] == [player_of(side)]:
        words = words[1:]
    return words or phrase.split()


def _touched(net: Net) -> frozenset[int]:
    lists = [t.effects for t in net.transitions] + [r.effects for r in net.reactions]
    touched: set[int] = set()
    for effect in (effect for effects in lists for effect in effects):
        for name in ("source", "target", "place"):
            if hasattr(effect, name):
                touched.add(getattr(effect, name))
    return frozenset(touched)


def condition_in_words(condition: Condition, net: Net) -> str:
    """A condition as a clause: "at least 2 north players in"."""
    if isinstance(condition, Comparison):
        return _comparison(condition, net)
    if isinstance(condition, Not):
        return f"not {condition_in_words(condition.part, net)}"
    joint, empty = (" and ", "always") if isinstance(condition, All) else (" or ", "never")
    parts = [condition_in_words(part, net) for part in condition.parts]
    nested = isinstance(condition, AnyOf) and len(parts) > 1
    return (f"({joint.join(parts)})" if nested else joint.join(parts)) or empty


def _comparison(comparison: Comparison, net: Net) -> str:
    if any(net.places[place].token == RESULT for _, place in comparison.terms):
        return by_a_rule(comparison, net)
    plus = [(c, net.places[p]) for c, p in comparison.terms if c > 0]
    minus = [(-c, net.places[p]) for c, p in comparison.terms if c < 0]
    if plus and minus:
        return _difference(_sum(plus), _sum(minus), comparison.relation, comparison.bound)
    if not plus:
        turned = {"<=": ">=", ">=": "<=", "==": "=="}[comparison.relation]
        return _bounded(minus, turned, -comparison.bound)
    return _bounded(plus, comparison.relation, comparison.bound)


def by_a_rule(comparison: Comparison, net: Net) -> str:
    """Such as "a rule by which the herons win at once": the end that a rule brings about by itself."""
    if comparison.relation == "==" and 1 <= comparison.bound <= len(net.sides):
        return f"a rule by which {does(net.sides[comparison.bound - 1], 'wins', 'win')} at once"
    return "a rule that ends the round at once"


def _bounded(terms: list[tuple[int, Place]], relation: str, bound: int) -> str:
    if relation != ">=" and bound == 0:
        return f"no {_sum(terms)}"
    how = {"<=": "at most", ">=": "at least", "==": "exactly"}[relation]
    if len(terms) == 1 and terms[0][0] == 1:
        return f"{how} {bound} {terms[0][1].one if bound == 1 else terms[0][1].many}"
    return f"{how} {bound} in all of {_sum(terms)}"


def _difference(more: str, fewer: str, relation: str, bound: int) -> str:
    if relation == "==":
        return f"as many {more} as {fewer}" if bound == 0 else f"exactly {bound} more {more} than {fewer}"
    if relation == ">=":
        return f"more {more} than {fewer}" if bound == 1 else f"at least {bound} more {more} than {fewer}"
    return f"at most {bound} more {more} than {fewer}" if bound else f"no more {more} than {fewer}"


def _sum(terms: list[tuple[int, Place]]) -> str:
    return " and ".join(place.many if times == 1 else f"{times} times {place.many}" for times, place in terms)
