"""Why something never came true in play, with what holds instead in every state and the lines behind it."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.condition import clauses
from compose.check.found import Value
from compose.check.seen import Seen
from compose.net.net import RESULT, All, AnyOf, Assign, Comparison, Condition, Move, Net, Not, Reaction, Transition
from grammar.frozen import evolve, field, frozen
from grammar.said import NOTHING, Chain, said
from grammar.span import Span


@frozen
class Why:
    """A reason: `instead` holds in every state looked at and shuts out what was asked (None where nothing does).

    `still` are the places of which it speaks whose counts never change.
    """

    told: Value
    instead: Condition | None = None
    lines: tuple[Span, ...] = ()
    still: frozenset[int] = field(default=frozenset(), eq=False)


UNCHANGED = ", for nothing changes their number"


def never_any(net: Net, *places: int) -> Why:
    """That nothing is ever in any of these places."""
    none = Comparison(tuple((1, place) for place in places), "==", 0)
    named = Chain(tuple(net.places[place] for place in places), " or ")
    return Why(said("there are never any {tokens}", tokens=named), none, still=frozenset(places))


NOTHING_LEADS_TO_IT = Why("nothing that can be tried in this game leads to it")


def why_never(seen: Seen, condition: Condition, otherwise: str) -> Why:
    """The first part that is never true, or that the parts are never true together; `otherwise` where they are."""
    for part in clauses(condition):
        if not seen.ever(part):
            return _instead(seen, part)
    if seen.ever(condition):
        return Why(otherwise)
    return Why(said("never all at once: {parts}", parts=Chain(clauses(condition), ", ")), Not(condition))


def why_not_fired(seen: Seen, transition: Transition) -> Why:
    """What keeps a transition from ever happening in play: its guard, or whom or what it needs."""
    needed = [
        Comparison(tuple((1, place) for place in places), ">=", 1)
        for places in (*transition.rate.limits, *(ratio.numerator for ratio in transition.rate.ratios))
        if places
    ]
    for part in (*clauses(transition.guard), *needed):
        if not seen.live.ever(part):
            return _instead(seen.live, part)
    return Why("what it needs is never there all at once")


def why_no_reaction(seen: Seen, reaction: Reaction) -> Why:
    """What keeps something from ever following by itself."""
    return why_never(seen, reaction.guard, "it is so from the start and never comes to be so anew")


def _instead(seen: Seen, part: Condition) -> Why:
    """What holds everywhere, where the part holds nowhere."""
    net = seen.net
    part = plain(part)
    if isinstance(part, Comparison) and not part.terms:
        return Why("what is counted there never comes there", Not(part))
    if isinstance(part, Not):
        return Why(said("it is always so: {condition}", condition=part.part), part.part)
    if isinstance(part, AnyOf) and part.parts:
        reasons = [_instead(seen, each) for each in part.parts]
        instead = All(tuple(each.instead for each in reasons if each.instead is not None))
        why = Chain(tuple(each.told for each in reasons), " and ")
        still = frozenset[int]().union(*(each.still for each in reasons))
        return Why(why, instead, sum((each.lines for each in reasons), ()), still)
    if isinstance(part, Comparison) and part.terms and all(times == 1 for times, _ in part.terms):
        if any(net.places[place].token == RESULT for _, place in part.terms):
            return _why_no_rule(seen, part)
        if (part.relation, part.bound) == (">=", 1):
            return never_any(net, *(place for _, place in part.terms))
        if part.bound >= 0 and not seen.ever(evolve(part, relation="<=")):
            return _always_more(seen, part)
    at = frozenset(place for _, place in part.terms) if isinstance(part, Comparison) else frozenset[int]()
    at = at if all(seen.still(place) for place in at) else frozenset()
    no_room = UNCHANGED if at else _no_room(part, net)
    return Why(said("there are never {condition}{no_room}", condition=part, no_room=no_room), Not(part), still=at)


def _why_no_rule(seen: Seen, part: Comparison) -> Why:
    """Why no rule ever ends the round so: what keeps whatever leads to such a rule from happening."""
    asked = [(place, part.bound) for _, place in part.terms]
    acts: list[Transition | Reaction] = [*seen.net.transitions, *seen.net.reactions]
    for act in acts:
        if any(isinstance(each, Assign) and (each.place, each.value) in asked for each in act.effects):
            if isinstance(act, Transition):
                return why_not_fired(seen, act)
            return why_no_reaction(seen, act)
    return NOTHING_LEADS_TO_IT


def plain(part: Condition) -> Condition:
    """The same without a "not", where a comparison says it."""
    if isinstance(part, Not) and isinstance(part.part, Comparison) and part.part.relation != "==":
        turned, by = ("<=", -1) if part.part.relation == ">=" else (">=", 1)
        return evolve(part.part, relation=turned, bound=part.part.bound + by)
    return part


def _always_more(seen: Seen, part: Comparison) -> Why:
    """Which of the places always hold more than the bound: the fewest that do so each by itself, else all together."""
    net, places = seen.net, [place for _, place in part.terms]
    least = {place: seen.fewest(place) for place in places}
    enough: list[int] = []
    for place in sorted(places, key=lambda place: least[place], reverse=True):
        if sum(least[each] for each in enough) <= part.bound:
            enough.append(place)
    if sum(least[each] for each in enough) <= part.bound:
        enough = places
    named = tuple(net.places[place] for place in enough)
    told = said("some {tokens}", tokens=Chain(named, " or "))
    if part.bound != 0:
        told = said("at least {least} {tokens}", least=part.bound + 1, tokens=Chain(named, " and "))
    still = all(seen.still(place) for place in enough)
    reason, lines = _for_what(net, enough) if still else ("", ())
    instead = Comparison(tuple((1, place) for place in enough), ">=", part.bound + 1)
    at = frozenset(enough) if still else frozenset[int]()
    return Why(said("there are always {some}{why}", some=told, why=reason), instead, lines, at)


def _for_what(net: Net, places: Sequence[int]) -> tuple[str, tuple[Span, ...]]:
    """Why tokens are never taken from places where the counts stay as they are."""
    spared = dict(net.spared)
    if all(place in spared for place in places):
        return ", for nobody may aim at them", tuple(dict.fromkeys(spared[place] for place in places))
    return UNCHANGED, ()


def _no_room(condition: Condition, net: Net) -> Value:
    """Such as ", for there is room for 2", where the condition asks for more in a place than find room there."""
    if not isinstance(condition, Comparison) or condition.relation != ">=":
        return NOTHING
    asked = {place for times, place in condition.terms if times > 0}
    lists = [t.effects for t in net.transitions] + [r.effects for r in net.reactions]
    rooms = {room for effects in lists for effect in effects if isinstance(effect, Move) for room in effect.rooms}
    short = [room.most for room in rooms if asked <= set(room.places) and room.most < condition.bound]
    return said(", for there is room for {most}", most=min(short)) if short else NOTHING
