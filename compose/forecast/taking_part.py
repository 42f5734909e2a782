"""Which pupils take part in play: whoever acts, keeps something, may catch, or has the ball sent to them."""

from __future__ import annotations

from collections.abc import Iterator

from compose.check.condition import places_read
from compose.net.net import Move, Net, Reaction, Transition
from compose.net.told import Ticked, Tried
from grammar.core.area_kind import AreaKind
from grammar.core.rules import Go, Person, Result, Swap
from grammar.core.values import PLAIN, At, Presence, without_load

SENT_TO = ("mate", "player")  # aims at somebody: whoever may be aimed at takes part


def taking_part(net: Net) -> frozenset[int]:
    """The places of players who act, who keep something, to whom others send the ball or who may catch it; to wait
    till somebody frees one is no act, and no more is it to catch a pass where one was sent to wait."""
    acting = {place for t in net.transitions if t.side is not None for limit in t.rate.limits for place in limit}
    reached = {place for t in net.transitions for place in _reached(net, t)} - _sent_to_wait(net)
    reached |= {place for t in net.transitions for place in _acting_outside(net, t)}
    busy, catching = acting.union(net.keeping), set(sides_that_catch(net))
    return frozenset(
        number
        for number, place in enumerate(net.places)
        if place.token == "player"
        and place.area is not AreaKind.QUEUE
        and not (isinstance(place.standing, At) and place.standing.spot.is_frozen)
        and (
            number in reached
            or (number in busy and not isinstance(place.standing, At))
            or (place.side in catching and place.standing is Presence.PLAYING)
        )
    )


def _reached(net: Net, tried: Transition) -> Iterator[int]:
    """The places of those to whom, or at whom, it is sent: in play, or where the pass goes."""
    if tried.attempt.aim not in SENT_TO:
        return
    to = tried.told.moment.mate_at if isinstance(tried.told, Tried) else None
    for place in places_read(tried.guard):
        standing = net.places[place].standing
        if not isinstance(standing, At) or not isinstance(tried.told, Tried) or standing == to:
            yield place


def _acting_outside(net: Net, tried: Transition) -> Iterator[int]:
    """The places outside of play from which whoever tries it acts."""
    if not isinstance(tried.told, Tried) or not isinstance(tried.told.moment.by_at, At):
        return
    by, at = tried.told.moment.by, tried.told.moment.by_at
    role = without_load(by.role)
    task = None if role is PLAIN else role.key
    for number in places_read(tried.guard):
        place = net.places[number]
        if (place.token, place.side, place.kind, place.standing) == ("player", by.side.key, task, at):
            yield number


def _sent_to_wait(net: Net) -> frozenset[int]:
    """The places outside of play to which others send whoever plays."""
    moves: tuple[Transition | Reaction, ...] = (*net.transitions, *net.reactions)
    return frozenset(
        effect.target
        for each in moves
        if not _of_their_own(each)
        for effect in each.effects
        if isinstance(effect, Move)
        and net.places[effect.source].standing is Presence.PLAYING
        and isinstance(net.places[effect.target].standing, At)
    )


def _of_their_own(each: Transition | Reaction) -> bool:
    """Whether nobody goes anywhere by it but whoever tried, and succeeded; by the clock a task is given."""
    if isinstance(each.told, Ticked):
        return True
    if not isinstance(each, Transition) or not isinstance(each.told, Tried) or each.outcome != "success":
        return False
    return all(effect.who is Person.ACTOR for effect in each.told.effects if isinstance(effect, Go | Swap))


def sides_that_catch(net: Net) -> Iterator[str]:
    """The sides of which whoever is in play may catch what others send."""
    for transition in net.transitions:
        told = transition.told
        if isinstance(told, Tried) and told.moment.result is Result.CAUGHT and told.moment.concerned is not None:
            yield told.moment.concerned.key
