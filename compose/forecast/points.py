"""Points past the bound to which the check counts them.

Where no finish asks for a number of points, the net counts them up to a bound of its own, so that its space
stays finite. A forecast may want to know how many there are beyond; a simulation can count on.
"""

from __future__ import annotations

import attrs

from compose.check.condition import places_read
from compose.forecast.course import Course
from compose.net.net import Net

ROOM = 1_000  # points that no round of a lesson reaches
OFTEN = 0.001  # chance from which points at their bound are worth a second look


def passes_bound(net: Net, course: Course) -> bool:
    """Whether points are at their bound when play stops, though no end of play asks for so many."""
    asked = {place for end in net.ends for place in places_read(end.guard)}
    return any(float(chances[-1]) > OFTEN for place, chances in course.points.items() if place not in asked)


def points_decide(net: Net) -> bool:
    """Whether the result at the bell, or over two halves, hangs on points."""
    if net.match.halves and any(place.token == "points" for place in net.places):
        return True
    results = net.bell.results if net.bell is not None else ()
    return any(net.places[place].token == "points" for end in results for place in places_read(end.guard))


def with_room(net: Net) -> Net:
    """The net with room for more points, for a simulation alone."""
    asked = {place for end in net.ends for place in places_read(end.guard)}
    return attrs.evolve(
        net,
        places=tuple(
            attrs.evolve(place, capacity=ROOM) if place.token == "points" and number not in asked else place
            for number, place in enumerate(net.places)
        ),
    )
