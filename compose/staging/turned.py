"""A hall seen by who looks along the court where the court lies across it: turned by a right angle."""

from __future__ import annotations

from attrs import evolve

from compose.staging.floor.values import Rectangle
from library import Door, Hall, Marking, Obstacle

WALL = {"north": "east", "east": "south", "south": "west", "west": "north"}  # where each wall comes to be


def turned_hall(hall: Hall) -> Hall:
    """The hall with its length upwards: north is on the right then. Doors are still told from the new west or south."""
    long = hall.length_m.usual
    return evolve(
        hall,
        length_m=hall.width_m,
        width_m=hall.length_m,
        doors=tuple(_door(door, long) for door in hall.doors),
        obstacles=tuple(_obstacle(each, long) for each in hall.obstacles),
        markings=tuple(_marking(each, long) for each in hall.markings),
    )


def turned_box(box: Rectangle, long: float) -> Rectangle:
    """A rectangle of a hall of that length, in the hall turned."""
    return Rectangle(box.bottom, long - box.right, box.top, long - box.left)


def _door(door: Door, long: float) -> Door:
    along = door.side in ("north", "south")
    return evolve(door, side=WALL[door.side], at_m=long - door.at_m if along else door.at_m)


def _obstacle(fixed: Obstacle, long: float) -> Obstacle:
    box = Rectangle(fixed.x_m, fixed.y_m, fixed.x_m + fixed.length_m, fixed.y_m + fixed.width_m)
    now = turned_box(box, long)
    return evolve(fixed, x_m=now.left, y_m=now.bottom, length_m=now.length, width_m=now.width)


def _marking(marking: Marking, long: float) -> Marking:
    return evolve(marking, x_m=marking.y_m, y_m=long - marking.x_m, turned=not marking.turned)
