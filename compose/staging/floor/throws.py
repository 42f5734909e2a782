"""The attempts of a game as lines on the floor: who, what, from where, how far."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.distance import Reach, reach
from compose.staging.floor.values import Floor
from grammar.core.game import Core
from grammar.core.play import Aim, Along, AtPlayers, Attempt, AtThing, Offer, Past, PickUp, Through, ToMate
from grammar.core.values import PLAIN, AreaId, At, Landmark, Part_of_a_side, SideId, Skill, without_load
from grammar.frozen import evolve, field, frozen


@frozen
class Throw:
    """One attempt of one side at one kind of goal; `ways` are the skills, `aim` is one of several alike."""

    side: SideId
    role: Part_of_a_side
    ways: tuple[Skill, ...]
    aim: Aim
    reach: Reach
    lines: tuple[int, ...] = field(eq=False)


def throws(core: Core, floor: Floor) -> tuple[Throw, ...]:
    """Every attempt of the play, line by line, side by side; those of a role only where they go otherwise far."""
    found: dict[tuple[object, ...], Throw] = {}
    for offer in core.play.offers:
        if any(attempt.skill in (Skill.TOUCH, Skill.TAKE) for attempt in offer.attempts):
            continue  # a chase is no line on the floor; what is taken is drawn as it is brought
        for throw in _of_offer(core, floor, offer):
            length = round(throw.reach.metres, 3)
            found.setdefault((throw.lines, throw.side, goal_of(throw.aim), length), throw)
    return tuple(found.values())


def _of_offer(core: Core, floor: Floor, offer: Offer) -> Iterator[Throw]:
    """One throw for each goal, the nearest of those alike: the cones of any other side, by any skill."""
    alike: dict[object, list[Attempt]] = {}
    for attempt in offer.attempts:
        for aim in _apart(attempt.aim):
            alike.setdefault((goal_of(aim), isinstance(aim, ToMate) and aim.at), []).append(evolve(attempt, aim=aim))
    for attempts in alike.values():
        ways = tuple(dict.fromkeys(attempt.skill for attempt in attempts))
        aims = dict.fromkeys(attempt.aim for attempt in attempts)
        tries = [(reach(floor, core, offer.by, aim, offer.figures.from_m, waiting=offer.at), aim) for aim in aims]
        nearest, aim = min(tries, key=lambda each: each[0].metres)
        yield Throw(offer.by.side, without_load(offer.by.role), ways, aim, nearest, offer.lines)


def _apart(aim: Aim) -> tuple[Aim, ...]:
    """A pass to team-mates at several places is several passes."""
    if not isinstance(aim, ToMate):
        return (aim,)
    return tuple(evolve(aim, at=frozenset({at})) for at in sorted(aim.at, key=str))


def goal_of(aim: Aim) -> object:
    """What an aim has in common with like ones of other sides: the kind of thing, the role, the line, the place."""
    match aim:
        case AtThing() | Through():
            return aim.thing.kind
        case AtPlayers():
            return AtPlayers, role_of(aim)
        case Past():
            return Past, aim.line.of
        case ToMate():
            return ToMate, place_of(aim)
        case Along() | PickUp():
            return Along, aim.goal.of


def role_of(aim: AtPlayers) -> Part_of_a_side:
    """The role that is aimed at, or none where players with and without one are."""
    roles = {without_load(who.role) for who in aim.of}
    return next(iter(roles)) if len(roles) == 1 else PLAIN


def place_of(aim: ToMate) -> Landmark | AreaId | None:
    """Where a team-mate stands who waits somewhere; None in play."""
    return next((at.spot.of for at in aim.at if isinstance(at, At)), None)
