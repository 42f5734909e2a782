"""At which places of the sheet the players of each population can come to be."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.net.lower.builder import Builder
from grammar.core.fouls import Fouled
from grammar.core.game import Play
from grammar.core.lives import LastLife
from grammar.core.play import Waiting
from grammar.core.rules import AllPlaying, Go, Happening, KeptFor, Person, Rule, Subject, Swap
from grammar.core.values import SHARED, At, Laden, Owner, Population, SideId, Spot, Thing, without_load


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
