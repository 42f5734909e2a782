"""Who can be touched where: on floor that touchers and touched share, less what is safe there."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.floor import ground_of
from compose.staging.floor.homes import floors_of
from grammar.core.declared import Doing
from grammar.core.game import Core, Play
from grammar.core.play import AtPlayers
from grammar.core.values import Population, Skill
from grammar.finding import Finding, Severity


def safe_share(play: Play, who: Population) -> float:
    """The part of their floor on which a population cannot be touched: they are there as often as it is large
    (assumption)."""
    if not any(Doing.TOUCH in area.shut for area in play.areas):
        return 0.0
    ground = ground_of(play)
    floors = floors_of(play, ground, who)
    safe = {area.rectangle for area in ground.areas if Doing.TOUCH in area.shut}
    whole = sum(floor.length * floor.width for floor in floors)
    if whole <= 0:
        return 0.0
    return min(1.0, sum(floor.common_m2(area) for floor in floors for area in safe) / whole)


def nobody_in_reach(core: Core) -> Iterator[Finding]:
    """A finding for every line by which players touch others whom they never meet."""
    told: set[int] = set()
    for offer in core.play.offers:
        aims = [each.aim for each in offer.attempts if each.skill is Skill.TOUCH and isinstance(each.aim, AtPlayers)]
        line = core.lines[offer.lines[0]]
        if not aims or line.number in told or any(meet(core.play, offer.by, who) for aim in aims for who in aim.of):
            continue
        told.add(line.number)
        title = "Nobody can be touched: these players and those whom they touch stay on different floor."
        hint = 'Let one of them cross, such as "taggers stay in the half of the other side".'
        yield Finding("N-nowhere", Severity.ERROR, title, line.span, hint)


def meet(play: Play, one: Population, other: Population) -> bool:
    """Whether two populations share any floor."""
    ground = ground_of(play)
    return any(
        mine.common_m2(theirs) > 0 for mine in floors_of(play, ground, one) for theirs in floors_of(play, ground, other)
    )
