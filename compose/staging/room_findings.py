"""The court in the hall: whether it fits, what stands in its way, how near the walls are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.staging.floor.values import Rectangle
from compose.staging.found import note, warning
from compose.staging.limit import Limit
from compose.staging.room import Room
from grammar.finding import Finding
from grammar.game import Game
from grammar.words import count


def room_findings(game: Game, room: Room | None, limits: Sequence[Limit]) -> Iterator[Finding]:
    """The court in the hall: size, strips to the walls, fixed things, floor for each pupil."""
    if room is None:
        return
    place = game.sheet.span
    if not room.fits:
        short = -2 * room.run_off
        size = f"{count(room.courts, 'court')} of {room.long:.4g} m by {room.wide:.4g} m"
        do = "do" if room.courts > 1 else "does"
        title = f"{size} {do} not fit in the {room.hall.name}: {short:.2g} m are missing."
        yield warning("F-hall", title, place, "Make the court smaller.", short_m=short)
        return
    yield from _fixed_things(game, room)
    for each in limits:
        if each.kept:
            continue
        asked = f"{each.usual:g} {each.unit} is usual, {each.least:g} {each.unit} the least"
        title = f"The {each.what} is {each.there:.3g} {each.unit}; {asked}."
        code = "F-area" if each.unit == "m2" else "F-run-off"
        hint = f"Source: {each.said_by()}."
        make = warning if each.broken else note
        yield make(code, title, place, hint, there=each.there, least=each.least, usual=each.usual)


def _fixed_things(game: Game, room: Room) -> Iterator[Finding]:
    """Things fixed in the hall that reach into the only court, laid in the middle."""
    if room.courts > 1:
        return
    court = _court_in_hall(room)
    for fixed in room.hall.obstacles:
        box = Rectangle(fixed.x_m, fixed.y_m, fixed.x_m + fixed.length_m, fixed.y_m + fixed.width_m)
        if box.overlaps(court):
            title = f"The {fixed.name} of the {room.hall.name} stands where the court should lie."
            yield warning("F-fixed", title, game.sheet.span, "Lay the court elsewhere, or make it smaller.")


def _court_in_hall(room: Room) -> Rectangle:
    x, y = room.hall.length_m.usual / 2, room.hall.width_m.usual / 2
    along, across = (room.wide, room.long) if room.turned else (room.long, room.wide)
    return Rectangle(x - along / 2, y - across / 2, x + along / 2, y + across / 2)
