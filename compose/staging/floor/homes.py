"""Where players stay while they play, on the floor."""

from __future__ import annotations

from compose.staging.floor.ground import Ground
from compose.staging.floor.regions import regions
from compose.staging.floor.values import KEPT_OFF, Rectangle
from grammar.core.game import Play
from grammar.core.play import Home
from grammar.core.values import Population
from grammar.frozen import evolve


def homes_of(play: Play, who: Population) -> tuple[Home, ...]:
    """All places where a population stays."""
    return tuple(home for home in play.homes if home.who == who)


def floors_of(play: Play, ground: Ground, who: Population) -> list[Rectangle]:
    """The floors that a population uses: where it stays, else the whole court."""
    found = [region.rectangle for home in homes_of(play, who) for region in regions(ground, home.at, None, who.side)]
    return found or [ground.court]


def around(floor: Rectangle, hole: Rectangle) -> list[Rectangle]:
    """What is left beside a hole: before, behind and on both sides of it, as far as there is any floor."""
    if not floor.overlaps(hole):
        return [floor]
    found = (
        evolve(floor, right=hole.left),
        evolve(floor, left=hole.right),
        evolve(floor, top=hole.bottom),
        evolve(floor, bottom=hole.top),
    )
    return [box for box in found if box.length > 0 and box.width > 0]


def standing(play: Play, ground: Ground, who: Population) -> list[Rectangle]:
    """The floors from which a population aims: where it stays, less what it does not enter or act from."""
    boxes = floors_of(play, ground, who)
    for area in ground.areas:
        if who in area.out:
            boxes = [part for box in boxes for part in around(box, area.rectangle)] or boxes
        elif area.shut & KEPT_OFF:
            boxes = [box.without(area.rectangle) for box in boxes]
    return boxes
