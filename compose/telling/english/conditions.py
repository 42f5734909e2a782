"""Conditions of the net: "at least 2 north players in"."""

from __future__ import annotations

from compose.net.net import RESULT, All, AnyOf, Comparison, Condition, Net, Not, Place
from compose.net.sums import whose_lives
from compose.telling.english.nouns import counted, many
from compose.telling.english.places import of_side
from compose.telling.sides import does
from grammar.core.values import SideId


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
        return _difference(_sum(net, plus), _sum(net, minus), comparison.relation, comparison.bound)
    if not plus:
        turned = {"<=": ">=", ">=": "<=", "==": "=="}[comparison.relation]
        return _bounded(net, minus, turned, -comparison.bound)
    return _bounded(net, plus, comparison.relation, comparison.bound)


def by_a_rule(comparison: Comparison, net: Net) -> str:
    """Such as "a rule by which the herons win at once": the end that a rule brings about by itself."""
    if comparison.relation == "==" and 1 <= comparison.bound <= len(net.sides):
        return f"a rule by which {does(net.sides[comparison.bound - 1], 'wins', 'win')} at once"
    return "a rule that ends the round at once"


def _bounded(net: Net, terms: list[tuple[int, Place]], relation: str, bound: int) -> str:
    if relation != ">=" and bound == 0:
        return f"no {_sum(net, terms)}"
    how = {"<=": "at most", ">=": "at least", "==": "exactly"}[relation]
    if len(terms) == 1 and terms[0][0] == 1:
        return f"{how} {bound} {counted(net, terms[0][1], bound)}"
    return f"{how} {bound} in all of {_sum(net, terms)}"


def _difference(more: str, fewer: str, relation: str, bound: int) -> str:
    if relation == "==":
        return f"as many {more} as {fewer}" if bound == 0 else f"exactly {bound} more {more} than {fewer}"
    if (relation == "<=" and bound < 0) or (relation == ">=" and bound < 0):
        less, how = -bound, {"<=": "at least", ">=": "at most"}[relation]
        few = "fewer" if (how, less) == ("at least", 1) else f"{how} {less} fewer"
        return f"{few} {more} than {fewer}"
    if relation == ">=":
        if bound == 0:
            return f"at least as many {more} as {fewer}"
        return f"more {more} than {fewer}" if bound == 1 else f"at least {bound} more {more} than {fewer}"
    return f"at most {bound} more {more} than {fewer}" if bound else f"no more {more} than {fewer}"


def _sum(net: Net, terms: list[tuple[int, Place]]) -> str:
    if (side := whose_lives(terms)) is not None:
        return of_side("lives", SideId(side))
    named = ((times, many(net, place)) for times, place in terms)
    return " and ".join(several if times == 1 else f"{times} times {several}" for times, several in named)
