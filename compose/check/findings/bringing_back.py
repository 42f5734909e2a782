"""What brings balls back from a side that has them and nothing to do with them: no one need fetch what is at hand."""

from __future__ import annotations

from compose.check.found import BackBy, FetchedBy, KeptBy, Value
from compose.check.study import Study
from compose.net.net import Move, Net, Place
from compose.net.told import Fetched, Tried
from grammar.core.rules import Result
from grammar.core.skills import SKILL_WORDS
from grammar.core.values import At, Landmark
from grammar.said import said


def in_hands(where: Place) -> bool:
    """Whether a side has what is counted there, wherever its players are."""
    return isinstance(where.standing, At) and where.standing.spot.of is Landmark.HANDS


def out_of_hands(study: Study, place: int) -> Value:
    """What keeps balls out of the hands of a side that has nothing to do with them: nobody fetches from hands."""
    net, where = study.net, study.net.places[place]
    bringing = [each for each in net.transitions if any(_brings(effect, place) for effect in each.effects)]
    users = dict.fromkeys(net.places[number].side for each in net.transitions for limit in each.rate.limits
                          for number in limit if _is_same_ball_elsewhere(net.places[number], where))  # fmt: skip
    for act in bringing:
        told = act.told
        if isinstance(told, Fetched) and (others := [side for side in users if side]):
            instead = FetchedBy(where, others[0])
            if own := [rule for rule in act.rules if rule in net.rules]:
                return said('Leave out {line}, or write instead of it "{instead}".', line=own[0], instead=instead)
            return said('Say who alone fetches them, such as "{line}".', line=instead)
        if isinstance(told, Tried) and told.moment.skill and told.moment.result not in (Result.CAUGHT, None):
            state = "missed" if told.moment.result is Result.MISSED else "scored"
            kept = KeptBy(where, state, SKILL_WORDS[told.moment.skill].doer)
            return said('Say who has them then, such as "{line}".', line=kept)
    return "Say what that side may do with them, or who has them then."


def in_half(where: Place) -> bool:
    """Whether a side has at hand what is counted there: nobody needs to fetch it."""
    return isinstance(where.standing, At) and where.standing.spot.of is Landmark.HALF


def out_of_half(net: Net, place: int) -> Value:
    """What brings balls back from a side that has them at hand and nothing to do with them."""
    for each in net.transitions:
        if isinstance(each.told, Tried) and any(_brings(effect, place) for effect in each.effects):
            states: dict[Result | None, str] = {Result.MISSED: "missed", Result.CAUGHT: "caught"}
            state = states.get(each.told.moment.result, "scored")
            line = BackBy(net.places[place], state)
            return said('Say what that side may do with them, or that they go back, such as "{line}".', line=line)
    return "Say what that side may do with them, or who has them then."


def _brings(effect: object, place: int) -> bool:
    return isinstance(effect, Move) and effect.target == place


def _is_same_ball_elsewhere(one: Place, where: Place) -> bool:
    return in_hands(one) and one.kind == where.kind and one.side != where.side
