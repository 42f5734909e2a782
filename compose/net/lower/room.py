"""How many players find room in an area, and how many may have a role: whoever finds none stays as they are.

An area that every side has for itself has that room for every side; one that all share has it for all together. What
lies in several places has it in each of them, and whoever comes goes where there is room.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.tokens import places_at, player_place
from compose.net.net import Room
from grammar.core.declared import STOOD_ON, Area
from grammar.core.declared import Room as Limit
from grammar.core.values import At, Population, Presence, SideId, Spot, without_load
from grammar.finding import Finding, Severity
from grammar.words import count


def rooms_for(builder: Builder, before: Population, who: Population, standing: Presence | At) -> tuple[Room, ...]:
    """What bounds how many of a population can be somewhere, or can have its role."""
    found = [*_in_area(builder, who, standing)]
    role = builder.play.role(who)
    if role is not None and before != who:
        spots = sorted((At(spot) for each, spot in builder.whereabouts if each == who), key=repr)
        standings: tuple[Presence | At, ...] = (Presence.PLAYING, *spots)
        places = [place for each in standings for place in places_at(builder, who, each)]
        laden = [each for each in builder.play.laden if Population(each.side, without_load(each.role)) == who]
        places += [player_place(builder, each, Presence.PLAYING) for each in laden]
        found.append(Room(tuple(places), role.most))
    return tuple(found)


def _in_area(builder: Builder, who: Population, standing: Presence | At) -> Iterator[Room]:
    if not isinstance(standing, At) or (area := builder.play.area(standing.spot)) is None:
        return
    for limit in area.room:
        if who in limit.who:
            yield Room(_places(builder, standing.spot, limit), limit.most * area.places)


def _places(builder: Builder, spot: Spot, limit: Limit) -> tuple[int, ...]:
    """The places of all who take up the room that such a player would need."""
    there = builder.whereabouts
    return tuple(
        place
        for each in builder.play.populations()
        if each in limit.who and (each, spot) in there
        for place in places_at(builder, each, At(spot))
    )


def too_many_at_the_start(builder: Builder) -> Iterator[Finding]:
    """The set-up puts more players into an area than find room there."""
    told: set[int] = set()
    for area in builder.play.areas:
        spot = Spot(area.id, area.owner)
        for limit in area.room:
            start = sum(builder.places[place].start for place in _places(builder, spot, limit))
            lines = [start.lines[0] for start in builder.play.starts if start.at == spot]
            if start > limit.most * area.places and lines and lines[-1] not in told:
                told.add(lines[-1])
                yield _told(builder, area, limit, start, lines[-1])


def _told(builder: Builder, area: Area, limit: Limit, start: int, line: int) -> Finding:
    sides = {who.side for who in limit.who}
    noun = f"{next(iter(sides)).key} player" if len(sides) == 1 else "player"
    whose = f"{area.owner.key} player" if len(sides) > 1 and isinstance(area.owner, SideId) else noun
    there = f"{'on' if area.kind in STOOD_ON else 'in'} the {area.id.key}"
    title = f"The set-up puts {count(start, whose)} {there}; there is room for {limit.most * area.places}."
    hint = f'Let fewer start there, or say in space that there is room: "at most {count(start, noun)} there".'
    return Finding("N-room", Severity.ERROR, title, builder.core.lines[line].span, hint)
