"""What there is no floor for: attempts of players who may use only places in which nobody enters or acts, and things
to be had in an area that whoever should fetch or take them may not enter."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.homes import floors_of
from compose.staging.floor.values import KEPT_OFF, FloorArea
from grammar.core.declared import Area, Doing
from grammar.core.game import Core, Play
from grammar.core.play import Along, Fetch, PickUp, Who
from grammar.core.values import Population, Spot, Teacher, without_load
from grammar.finding import Finding, Severity, spoken
from grammar.said import Named, said


def nowhere_to_act(core: Core) -> Iterator[Finding]:
    """A finding for every line of attempts whose players are shut out of all the floor that they may use."""
    ground, told = ground_of(core.play), set[int]()
    for offer in core.play.offers:
        if offer.at:
            continue  # they act from where they wait
        line = core.lines[offer.lines[0]]
        shut = _covering(core.play, ground, offer.by)
        if shut is not None and line.number not in told:
            told.add(line.number)
            verb = "acts in" if Doing.ACT in shut.shut else "enters"
            nobody = "only others enter" if offer.by in shut.out else f"nobody {verb}"
            title = f"There is nowhere to do this from: {nobody} the {shut.name}, which is all their floor."
            hint = f"Make the {shut.name} less deep, or let players act there."
            yield Finding("N-nowhere", Severity.ERROR, title, line.span, hint)


def shut_out(core: Core) -> Iterator[Finding]:
    """A finding for every line by which all whom it names would have to go where only others enter."""
    ways: list[tuple[int, Who, tuple[Spot, ...]]] = []
    ways += [(each.lines[0], each.who, (each.spot,)) for each in core.play.services if isinstance(each, Fetch)]
    for offer in core.play.offers:
        on = [(each.aim.start, each.aim.goal) for each in offer.attempts if isinstance(each.aim, PickUp | Along)]
        ways += [(offer.lines[0], frozenset({offer.by}), spots) for spots in on]
    told = [(number, shut_to(core.play, who, *spots)) for number, who, spots in ways]
    for number in dict.fromkeys(number for number, _ in told):
        areas, line = [area for each, area in told if each == number], core.lines[number]
        if not line.granted and areas[0] is not None and all(areas):
            title = f"They cannot do this: only others enter the {areas[0].id.key}."
            hint = f"Let those do it who may be there, or let these enter the {areas[0].id.key}, too."
            others = (core.lines[areas[0].lines[0]].span,)
            yield Finding("N-nowhere", Severity.ERROR, title, line.span, hint, others)


def gone_to_though_shut(core: Core) -> Iterator[Finding]:
    """A finding for every line by which players take things from, or bring them to, where nobody enters; to fetch a
    ball that stops there is another matter."""
    told = set[int]()
    for offer in core.play.offers:
        aims = [each.aim for each in offer.attempts if isinstance(each.aim, PickUp | Along)]
        areas = [area for aim in aims for spot in (aim.start, aim.goal) if (area := core.play.area(spot)) is not None]
        area = next((each for each in areas if Doing.ENTER in each.shut), None)
        line = core.lines[offer.lines[0]]
        if area is not None and line.number not in told:
            told.add(line.number)
            name, others = Named(area.id.key), (core.lines[area.lines[0]].span,)
            title = said("Nobody enters the {area}, and by this line they go there.", area=name)
            hint = said("Say who may enter the {area}, or leave out that nobody does.", area=name)
            yield spoken("N-nowhere", Severity.WARNING, title, line.span, hint, others=others)


def shut_to(play: Play, who: Who, *spots: Spot) -> Area | None:
    """The first area of these places into which none of these may go."""
    if isinstance(who, Teacher):
        return None
    empty_handed = [Population(each.side, without_load(each.role)) for each in who]
    areas = (area for spot in spots if (area := play.area(spot)) is not None)
    return next((area for area in areas if all(area.keeps_out(each) for each in empty_handed)), None)


def _covering(play: Play, ground: Ground, by: Population) -> FloorArea | None:
    """An area that, by itself or with others like it, takes all the floor of some players."""
    shut = [area for area in ground.areas if area.shut & KEPT_OFF or by in area.out]
    floors = floors_of(play, ground, by)
    found = [next((area for area in shut if area.rectangle.joined(floor) == area.rectangle), None) for floor in floors]
    return found[0] if all(found) else None
