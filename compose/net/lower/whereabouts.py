"""At which places of the sheet the players of each population can come to be."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.net.lower.builder import Builder
from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.homes import floors_of
from compose.staging.floor.regions import regions
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Doing
from grammar.core.fouls import Fouled
from grammar.core.game import Play
from grammar.core.lives import LastLife
from grammar.core.play import ToMate, Waiting
from grammar.core.rules import AllPlaying, Go, Happening, KeptFor, Person, Rule, Subject, Swap
from grammar.core.values import SHARED, At, Laden, Owner, Population, SideId, Spot, Thing, without_load

ON_THE_FLOOR = (AreaKind.STRIP, AreaKind.ZONE, AreaKind.BASE, AreaKind.CIRCLE)


def places_of_players(play: Play) -> frozenset[tuple[Population, Spot]]:
    """Every population with every place to which the set-up or a rule sends it."""
    found = {(s.what, s.at) for s in play.starts if isinstance(s.what, Population) and isinstance(s.at, Spot)}
    for rule in play.rules:
        for effect in rule.effects:
            if isinstance(effect, Go) and isinstance(effect.to, At):
                found |= {(who, effect.to.spot) for who in meant(play, rule, effect.who)}
            elif isinstance(effect, Swap) and isinstance(effect.other, Waiting):
                found |= {(who, spot) for who in meant(play, rule, effect.who) for spot in effect.other.at}
            elif isinstance(effect, Swap) and isinstance(rule.trigger, Happening):
                there = [each.spot for each in rule.trigger.at if isinstance(each, At)]
                found |= {(who, spot) for who in rule.trigger.by for spot in there}
    return frozenset((Population(who.side, without_load(who.role)), spot) for who, spot in found)


def reached_in_play(play: Play, sent: frozenset[tuple[Population, Spot]]) -> frozenset[tuple[Population, Spot]]:
    """Every population with the areas, of those of which a line asks who is there, that it may run into as it plays:
    parts of its floor that are not shut to it, and to which no rule sends anybody to wait."""
    mates = (at for _, each in play.tries if isinstance(each.aim, ToMate) for at in each.aim.at)
    asked = {at.spot for at in mates if isinstance(at, At)} | {spot for offer in play.offers for spot in offer.at}
    open_to_all = {spot: area for spot in asked if (area := play.area(spot)) is not None and area.kind in ON_THE_FLOOR}
    waited_in = {spot for _, spot in sent}
    if not open_to_all.keys() - waited_in:
        return frozenset()
    ground = ground_of(play)
    return frozenset(
        (who, spot)
        for spot, area in open_to_all.items()
        if spot not in waited_in and Doing.ENTER not in area.shut
        for who in play.populations()
        if not area.keeps_out(Population(who.side, without_load(who.role))) and _runs_over(play, ground, who, spot)
    )


def _runs_over(play: Play, ground: Ground, who: Population, spot: Spot) -> bool:
    """Whether the floor on which somebody plays and a place share some ground."""
    places = [region.rectangle for region in regions(ground, spot, None, who.side)]
    return any(floor.overlaps(place) for floor in floors_of(play, ground, who) for place in places)


def meant(play: Play, rule: Rule, who: Subject) -> Iterable[Population]:
    """All populations of which somebody may be meant."""
    if isinstance(who, AllPlaying | Waiting):
        return who.who
    trigger = rule.trigger
    if isinstance(trigger, KeptFor | LastLife | Fouled):
        return trigger.who
    if not isinstance(trigger, Happening):
        return ()
    match who:
        case Person.ACTOR:
            return trigger.by
        case Person.OBJECT:
            return (each for each in trigger.to if isinstance(each, Population))
        case Person.MATE:
            return play.populations(*{each.side for each in trigger.by})
        case Person.CATCHER:
            return play.populations(*_sides(play, trigger, trigger.against))
        case Person.KEEPER:
            return play.populations(*_sides(play, trigger, {e.owner for e in trigger.to if isinstance(e, Thing)}))


def _sides(play: Play, trigger: Happening, owners: Iterable[Owner]) -> Iterator[SideId]:
    """The sides of owners; what is nobody's concerns the others, or the one side that there is."""
    actors = {each.side for each in trigger.by}
    for owner in owners:
        if owner is not SHARED:
            yield owner
        else:
            yield from [side for side in play.side_ids if side not in actors] or play.side_ids


def who_waits(builder: Builder, waiting: Waiting) -> tuple[tuple[Population, Spot], ...]:
    """The populations meant with the places where they can wait, in the order of the sheet.

    Where nobody ever waits, whoever would: the check then sees that the line takes no effect.
    """
    meant_there = [
        (who, spot) for spot in sorted(waiting.at, key=repr) for who in builder.play.populations() if who in waiting.who
    ]
    found = tuple(stand for stand in meant_there if stand in builder.whereabouts)
    return found or tuple(
        (who, spot) for who, spot in meant_there if spot.owner in (who.side, SHARED) and not isinstance(who.role, Laden)
    )
