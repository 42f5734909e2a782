"""Stranded: balls, bodies or waiting players gather where nothing can ever take them away again.

Once they are there no sentence fetches, frees or even uses them, though play goes on (a trap in the words of
T. Murata, Proceedings of the IEEE 77(4), 1989: once marked, it stays marked; here confirmed on the
explored graph, guards and all). Places where tokens may rest for good by the rules are `final` and
left alone; so are places where players take part in play, for staying there is no waiting.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from compose.check.condition import Bools
from compose.check.findings.bringing_back import in_half, in_hands, out_of_half, out_of_hands
from compose.check.found import FetchedBy, Found, Likewise, Value
from compose.check.graph import Ints, Longs
from compose.check.helping import freed_by_pass
from compose.check.left_alone import either_left_alone
from compose.check.pointing import how_many_like_this, span_of_arrival
from compose.check.study import Study, once
from compose.check.witness import line_of_play
from compose.net.net import Move, Net, Place, Rule, Transition
from compose.net.on_the_way import taken_about
from compose.net.told import Fetched, Ticked
from grammar.core.area_kind import AreaKind
from grammar.core.values import SHARED, AreaId, At, SideId
from grammar.finding import Severity
from grammar.frozen import evolve, frozen
from grammar.said import Chain, Written, said
from grammar.span import Span, nowhere

CODE = "C-stranded"
_PASS = Written('"players pass a ball to a frozen team-mate"')
MOVABLE = ("ball", "load", "body", "player")


@frozen(eq=False)
class Stranding:
    """A place where tokens are stranded, in which states, and whether elsewhere somebody may take them away."""

    place: int
    states: Longs
    sometimes: bool


def stranded(study: Study) -> list[Found]:
    """One finding for each kind of place where tokens can be stranded, but for those that are told as dead ends."""
    told = behind_dead_ends(study)
    return [finding_of(study, alike) for alike in _strandings(study) if alike[0].place not in told]


@once
def behind_dead_ends(study: Study) -> dict[int, Value]:
    """The places whose stranded tokens lie in every dead end, with what mends it: to take one away is a move there.

    Of like places of mirrored sides, the first stands for all.
    """
    stuck = study.table[study.dead_ends]
    found: dict[int, Value] = {}
    for alike in _strandings(study) if len(stuck) else []:
        never = not any(each.sometimes for each in alike)
        if never and stuck[:, [each.place for each in alike]].any(axis=1).all():
            found[alike[0].place] = Chain((_title(study, alike), _mend(study, alike)))
    return found


def lying_places(study: Study) -> frozenset[int]:
    """The places of `behind_dead_ends`, those of mirrored sides, too."""
    told = behind_dead_ends(study)
    return frozenset(each.place for alike in _strandings(study) if alike[0].place in told for each in alike)


@once
def _strandings(study: Study) -> list[list[Stranding]]:
    """The places where tokens can be stranded; like places of mirrored sides together."""
    found: dict[object, list[Stranding]] = {}
    for number, place in enumerate(study.net.places):
        if can_strand(study.net, number):
            stranding = _at(study, number)
            if stranding.states.size:
                found.setdefault(likeness(study, place), []).append(stranding)
    return list(found.values())


def can_strand(net: Net, number: int) -> bool:
    """Whether what is in a place may be stranded there: it may not rest for good by the rules, nor does it play."""
    place = net.places[number]
    if place.token not in MOVABLE or place.final:
        return False
    return place.token != "player" or not any(number in limit for t in net.transitions for limit in t.rate.limits)


def likeness(study: Study, place: Place) -> object:
    """What a place counts, without the side where it is one of the mirrored ones."""
    standing, own = place.standing, place.side in study.net.mirrored
    if own and isinstance(standing, At) and standing.spot.owner == SideId(place.side or ""):
        standing = At(evolve(standing.spot, owner=SHARED))
    return place.token, place.kind, None if own else place.side, standing


def _at(study: Study, place: int) -> Stranding:
    """Where tokens of a place are stranded."""
    space = study.space
    counts = study.table[:, place]
    change = counts[space.targets] - counts[study.sources]
    using = np.array([_uses(transition, place) for transition in study.net.transitions], dtype=np.bool_)
    freeing = (change < 0) | using[space.transitions]
    kept = (counts >= 1) & ~study.ended
    if freeing.any():
        free = np.zeros(space.states, dtype=np.bool_)
        free[study.sources[freeing]] = True
        kept &= ~free & study.far_from_over
        if kept.any():
            kept &= ~study.reaching(free) & ~_soon_over(study, study.space.transitions[change < 0])
    elif not ((change > 0).any() or _waits(study, place)):
        kept = np.zeros_like(kept)
    return Stranding(place, np.flatnonzero(kept), bool(freeing.any()))


def _waits(study: Study, place: int) -> bool:
    """Whether players wait there in a queue from the start, and no reaction ever lets them change places either."""
    if study.net.places[place].area is not AreaKind.QUEUE:
        return False
    reacted = zip(study.net.reactions, study.space.reacted, strict=True)
    moves = (each for act, happened in reacted if happened.fired for each in act.effects)
    return not any(isinstance(each, Move) and each.source == place for each in moves)


def _soon_over(study: Study, freeing: Ints) -> Bools:
    """Where the clock takes nothing away any more, but ends the round no later than it usually comes to do so."""
    net, schedule = study.net, study.net.schedule
    ticks = [net.transitions[number].told for number in np.unique(freeing)]
    times_s = sorted({float(told.at_s) for told in ticks if isinstance(told, Ticked)})
    if not times_s or schedule is None or net.bell is None:
        return np.zeros(study.space.states, dtype=np.bool_)
    usual_s = max(after - before for before, after in pairwise((0.0, *times_s)))
    passed = sum(time_s <= times_s[-1] for time_s in schedule.times_s)
    return np.greater_equal(study.table[:, schedule.place], passed) & (net.bell.after_s - times_s[-1] <= usual_s)


def _uses(transition: Transition, place: int) -> bool:
    """Whether a move needs the tokens of a place, or takes some away though it may bring as many in their stead."""
    taken = any(isinstance(effect, Move) and effect.source == place for effect in transition.effects)
    return taken or any(place in limit for limit in transition.rate.limits)


def finding_of(study: Study, alike: list[Stranding]) -> Found:
    """One finding for all that is stranded alike, with the first place and situation of them."""
    first = alike[0]
    states = first.states
    state = int(states[0])
    forbidding = forbidden_by(study, first.place)
    return Found(
        code=CODE,
        severity=Severity.NOTE if _is_store(study, first.place) else Severity.WARNING,
        title=_title(study, alike),
        place=forbidding.span if forbidding else _where(study, state, first.place),
        hint=Chain((*_how_many(study, states), _mend(study, alike))),
        witness=line_of_play(study.space, state),
        numbers=(
            ("situations", float(states.size)),
            ("most at once", float(study.table[states, first.place].max())),
        ),
        about=frozenset(each.place for each in alike),
        frees=freed_by_pass(study.net) if nobody_uses(study.net, study.net.places[first.place]) else frozenset(),
        astray=study.net.places[first.place].token == "player" and not first.sometimes,
        when_alone=all(bool(either_left_alone(study)[each.states].all()) for each in alike),
    )


def _how_many(study: Study, states: Longs) -> tuple[Value, ...]:
    """How common it is, where all situations are known."""
    return (how_many_like_this(states.size, study.space.states),) if study.space.complete else ()


def _is_store(study: Study, place: int) -> bool:
    """Whether it is an area of the sheet to which a line sends what players take along: whoever has it keeps it."""
    where = study.net.places[place]
    there = where.standing.spot.of if isinstance(where.standing, At) else None
    return where.token != "player" and isinstance(there, AreaId) and taken_about(study.net, where)


def _where(study: Study, state: int, place: int) -> Span:
    """The sentence that brought them there; nowhere for whom no move did."""
    return span_of_arrival(study, state, place) if study.space.by[state] >= 0 else nowhere()


def _title(study: Study, alike: list[Stranding]) -> Value:
    where = study.net.places[alike[0].place]
    since = "From here on nobody" if alike[0].sometimes else "Nobody"
    return said(
        "{since} may ever {free} the {tokens}{likewise}: they stay there while play goes on.",
        since=since,
        free=_act(study, where),
        tokens=where,
        likewise=Likewise(tuple(str(study.net.places[other.place].side) for other in alike[1:])),
    )


def _act(study: Study, where: Place) -> str:
    """What somebody would have to do with what lies there."""
    if taken_about(study.net, where):
        return "take"
    if where.token == "ball" and (in_hands(where) or in_half(where) or nobody_uses(study.net, where)):
        return "use"
    return {"player": "free"}.get(where.token, "fetch")


def nobody_uses(net: Net, ball: Place) -> bool:
    """Whether nobody does anything with balls of a kind but to fetch them, wherever they lie."""
    own = {number for number, place in enumerate(net.places) if (place.token, place.kind) == ("ball", ball.kind)}
    acting = (transition for transition in net.transitions if not isinstance(transition.told, Fetched))
    return not any(own.intersection(limit) for transition in acting for limit in transition.rate.limits)


def forbidden_by(study: Study, place: int) -> Rule | None:
    """The line by which nobody fetches what lies in a place, if there is one."""
    return dict(study.net.unfetched).get(place)


def _mend(study: Study, alike: list[Stranding]) -> Value:
    """What to write, for balls as a sentence that may stand in the sheet."""
    first, where = alike[0], study.net.places[alike[0].place]
    if _is_store(study, first.place):
        return "If they are to come back, say in play who takes them from there, and where to."
    if taken_about(study.net, where):
        return "Say in play who takes them from there, and where to."
    if where.token == "ball" and first.sometimes:
        return "Give whoever may play them a way back, or let the round finish when it comes to this."
    if where.token == "ball" and nobody_uses(study.net, where):
        return "Say in play who throws or rolls them, and at what, or leave them out."
    if where.token == "ball" and in_hands(where):
        return out_of_hands(study, first.place)
    if where.token == "ball" and in_half(where):
        return out_of_half(study.net, first.place)
    if not first.sometimes and first.place in freed_by_pass(study.net):
        if any(isinstance(each, Move) and each.source == first.place for each in study.net.effects):
            return "Let whoever passes to them come by a ball."
        return said("Say in play who passes to them, such as {line}.", line=_PASS)
    if where.token != "ball" or where.kind is None:
        who = _act(study, where)
        return said("Say who may {free} them and when, or say that they are out for the round.", free=who)
    forbidding, instead = forbidden_by(study, first.place), FetchedBy(where)
    if forbidding is not None:
        return said('Leave out {line}, or write instead of it "{instead}".', line=forbidding, instead=instead)
    return said('Say who may fetch them and when, such as "{line}".', line=instead)
