"""Who can be touched where: on floor that touchers and touched share, less what is safe there; and so who is hit."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import exp

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.homes import around, floors_of
from compose.staging.floor.values import Rectangle
from grammar.core.declared import Area, Doing
from grammar.core.game import Core, Play
from grammar.core.play import AtPlayers
from grammar.core.values import Population, SideId, Skill
from grammar.finding import Finding, Severity

USUAL_STAY_S = 20.0  # assumption: how long somebody stays in a safe place who may stay as long as they like


def safe_share(play: Play, who: Population, by: Population, doing: Doing = Doing.TOUCH) -> float:
    """How much of the time a population cannot be touched (or hit) by another one: they are in a safe place as often
    as it is large (assumption), less where they may not stay there for long."""
    safe = [area for area in play.areas if is_safe_from(area, by, doing)]
    shut = doing is Doing.TOUCH and any(area.keeps_out(who) for area in play.areas)
    if not safe and not shut:
        return 0.0
    ground = ground_of(play)
    floors = floors_of(play, ground, who)
    if shut and not _entered_floors(ground, floors_of(play, ground, by), who):
        return 1.0
    whole = sum(floor.length * floor.width for floor in floors)
    if whole <= 0:
        return 0.0
    known = {
        (area.id.key, area.owner.key if isinstance(area.owner, SideId) else None): _part_of_a_stay(area.stay_s)
        for area in safe
    }
    stays: dict[Rectangle, float] = {}
    for laid in ground.areas:
        part = known.get((laid.name, laid.owner), 0.0)
        stays[laid.rectangle] = max(part, stays.get(laid.rectangle, 0.0))
    stays = {rectangle: part for rectangle, part in stays.items() if part}
    weighed = [(sum(floor.common_m2(area) for floor in floors) / whole, part) for area, part in stays.items()]
    inside = sum(share * part for share, part in weighed)
    outside = max(0.0, 1.0 - sum(share for share, _ in weighed))
    return min(1.0, inside / (inside + outside)) if inside else 0.0


def is_safe_from(area: Area, by: Population, doing: Doing) -> bool:
    """Whether somebody in an area cannot be touched, or hit, by these: nobody is, or who touches may not go there."""
    return doing in area.shut or (doing is Doing.TOUCH and area.keeps_out(by))


def _entered_floors(ground: Ground, floors: list[Rectangle], who: Population) -> list[Rectangle]:
    """Of these floors what a population may enter."""
    for area in ground.areas:
        if who in area.out:
            floors = [part for floor in floors for part in around(floor, area.rectangle)]
    return floors


def _part_of_a_stay(limit_s: Fraction | None) -> float:
    """What is left of a usual stay (of a length that is drawn exponentially) where nobody may stay longer."""
    return 1.0 if limit_s is None else 1.0 - exp(-float(limit_s) / USUAL_STAY_S)


def nobody_in_reach(core: Core) -> Iterator[Finding]:
    """A finding for every line by which nobody ever meets whom they would touch."""
    chases: dict[int, list[tuple[Population, Population]]] = {}
    for offer in core.play.offers:
        aims = [each.aim for each in offer.attempts if each.skill is Skill.TOUCH and isinstance(each.aim, AtPlayers)]
        if aims:
            chases.setdefault(offer.lines[0], []).extend((offer.by, who) for aim in aims for who in aim.of)
    for number, pairs in chases.items():
        if any(meet(core.play, one, other) for one, other in pairs):
            continue
        line = core.lines[number]
        title = "Nobody can be touched: these players and those whom they touch stay on different floor."
        hint = 'Let one of them cross, such as "taggers stay in the half of the other side".'
        yield Finding("N-nowhere", Severity.ERROR, title, line.span, hint)


def meet(play: Play, one: Population, other: Population) -> bool:
    """Whether two populations share any floor."""
    ground = ground_of(play)
    return any(
        mine.common_m2(theirs) > 0 for mine in floors_of(play, ground, one) for theirs in floors_of(play, ground, other)
    )
