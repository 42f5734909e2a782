"""Where those stand in line who run in turn: each side in a lane of the place where the runs begin."""

from __future__ import annotations

from compose.staging.floor.ground import APART_M, Ground, Region
from compose.staging.floor.regions import regions
from grammar.core.game import Play
from grammar.core.play import Along
from grammar.core.values import AreaId, Population, Spot
from grammar.frozen import evolve


def in_line(play: Play, ground: Ground, who: Population) -> tuple[Region, ...]:
    """The lane of a side whose players do nothing but run in turn from an area; nothing for all others."""
    start = _start(play, who)
    if start is None or not isinstance(start.of, AreaId):
        return ()
    lanes = [side for side in play.side_ids if any(_start(play, each) == start for each in play.populations(side))]
    region = regions(ground, start, None, who.side)[0]
    box, number = region.rectangle, lanes.index(who.side)
    wide = (box.top - box.bottom) / len(lanes)
    rim = APART_M / 2 if len(lanes) > 1 else 0.0
    lane = evolve(box, bottom=box.bottom + number * wide + rim, top=box.bottom + (number + 1) * wide - rim)
    return (evolve(region, rectangle=lane, side=who.side),)


def _start(play: Play, who: Population) -> Spot | None:
    """From where all runs of a population begin that does nothing else."""
    own = [offer for offer in play.offers if offer.by == who]
    aims = [attempt.aim for offer in own for attempt in offer.attempts if offer.at_once]
    starts = {aim.start for aim in aims if isinstance(aim, Along)}
    every = sum(len(offer.attempts) for offer in own)
    return starts.pop() if len(starts) == 1 and len(aims) == every else None
