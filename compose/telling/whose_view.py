"""From whose point of view a value is told: who acts, and who is concerned where that is one of several."""

from __future__ import annotations

from typing import Any

from compose.telling.owners import owner_of
from compose.telling.voice import Voice
from grammar.core.declared import Area, Role, Side, Start, Supply
from grammar.core.ends import End, EndPoints, Won
from grammar.core.fouls import Fouled
from grammar.core.guards import Ahead, Compare, Either, Every, Guard
from grammar.core.lives import LastLife, Lives
from grammar.core.play import ComeBack, Fetch, Free, Guarding, Home, Offer, PickUp, StandUp
from grammar.core.rules import Becomes, Happening, KeptFor, Rest, Rule
from grammar.core.runs import InARow
from grammar.core.stopping import Blocking
from grammar.core.values import Owner, SideId, Spot, Teacher, Thing
from grammar.frozen import frozen


@frozen
class View:
    """None where nobody acts, or where all sides do together; `other` only where of several sides it is one."""

    me: SideId | None = None
    other: SideId | None = None


def view(voice: Voice, value: Any) -> View:
    """The point of view of a value of the core."""
    match value:
        case Home():
            return View(value.who.side)
        case Offer():
            return _of_offer(value)
        case Fetch() | StandUp() | Guarding() | Blocking():
            return View(_side(value.who))
        case Free():
            who, owners = _side(value.who), frozenset(spot.owner for spot in value.waiting.at)
            return _against(who, owners) if who else View(_lone(owners))
        case ComeBack():
            waiting, owners = _lone(who.side for who in value.who), frozenset(spot.owner for spot in value.at)
            return _against(waiting, owners) if waiting else View(_lone(owners))
        case Rest():
            return _against(value.by, value.against)
        case Rule():
            return _of_rule(voice, value)
        case End():
            first = value.verdicts[0]
            return View(first.side if isinstance(first, Won) else _of_guard(voice, value.guard))
        case Area():
            return View(_lone([value.owner]))
        case Role():
            return View(value.side)
        case EndPoints():
            return View(value.side)
        case Lives():
            return View(value.who.side)
        case Supply():
            return View(_lone([value.thing.owner]))
        case Start():
            owner = value.what.owner if isinstance(value.what, Thing) else value.what.side
            place = [value.at.owner] if isinstance(value.at, Spot) else []
            return View(_lone([owner]) or _lone(place))
        case Side():
            return View()
    return View()


def _of_offer(offer: Offer) -> View:
    """What is taken from each of several sides is one offer for each of them."""
    starts = {attempt.aim.start.owner for attempt in offer.attempts if isinstance(attempt.aim, PickUp)}
    return _against(offer.by.side, frozenset(starts))


def _of_rule(voice: Voice, rule: Rule) -> View:
    match rule.trigger:
        case Happening():
            return _against(next(iter(rule.trigger.by)).side, rule.trigger.against)
        case InARow():
            return View(rule.trigger.side)
        case Fouled():
            return _against(next(iter(rule.trigger.who)).side, frozenset(rule.trigger.against))
        case KeptFor() | LastLife():
            return View(_side(rule.trigger.who))
        case Becomes():
            return View(_of_guard(voice, rule.trigger.guard))
    return View()


def _against(side: SideId, against: frozenset[Owner]) -> View:
    one = _lone(against)
    return View(side, one if one != side else None)


def _lone(owners: Any) -> SideId | None:
    found = {owner for owner in owners if isinstance(owner, SideId)}
    return next(iter(found)) if len(found) == 1 else None


def _side(who: Any) -> SideId | None:
    return None if isinstance(who, Teacher) else _lone(each.side for each in who)


def _of_guard(voice: Voice, guard: Guard) -> SideId | None:
    match guard:
        case Compare() | Ahead():
            return _lone([owner_of(voice, guard.count)])
        case Every() | Either():
            return _lone(side for part in guard.parts if (side := _of_guard(voice, part)) is not None)
