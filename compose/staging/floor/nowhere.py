"""Attempts for which there is no floor: their players may use only places in which nobody enters or acts."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.homes import floors_of
from compose.staging.floor.values import KEPT_OFF, FloorArea
from grammar.core.declared import Doing
from grammar.core.game import Core, Play
from grammar.core.values import Population
from grammar.finding import Finding, Severity


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


def _covering(play: Play, ground: Ground, by: Population) -> FloorArea | None:
    """An area that, by itself or with others like it, takes all the floor of some players."""
    shut = [area for area in ground.areas if area.shut & KEPT_OFF or by in area.out]
    floors = floors_of(play, ground, by)
    found = [next((area for area in shut if area.rectangle.joined(floor) == area.rectangle), None) for floor in floors]
    return found[0] if all(found) else None
