"""What stands fixed in a hall, as rectangles: in the hall's metres, and in those of a court that it stands in."""

from __future__ import annotations

from compose.staging.clear_floor import fixed_boxes
from compose.staging.floor.covered import common, covered_m2
from compose.staging.floor.values import Rectangle
from compose.staging.places import Court
from compose.staging.turned import turned_box
from library import Hall


def free_m2(hall: Hall) -> float:
    """The floor of the hall that nothing stands on, in square metres."""
    return hall.area_m2 - covered_m2(fixed_boxes(hall))


def fixed_in(court: Court, hall: Hall) -> tuple[Rectangle, ...]:
    """What of a court without what lies beside it is under fixed things, in the court's own metres."""
    boxes, own = fixed_boxes(hall), court.box
    if court.turned:
        long = hall.length_m.usual
        boxes, own = tuple(turned_box(each, long) for each in boxes), turned_box(own, long)
    extent = court.floor.extent
    here = (each.moved(extent.left - own.left, extent.bottom - own.bottom) for each in boxes)
    return tuple(part for each in here if (part := common(each, court.floor.court)) is not None)
