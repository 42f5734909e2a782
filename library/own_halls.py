"""A hall as a teacher tells it → the record that the library's own halls have."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from grammar.finding import Finding, Outcome, mistake
from grammar.frozen import frozen
from grammar.hall_told import AlongTold, DoorTold, HallTold, LinesTold, PlaceTold, SizeTold, StandingTold
from grammar.said import Value, listed, perhaps_meant, quoting, write
from grammar.span import Span
from library.load import courts
from library.norm_tables import norms
from library.records import UNNAMED, Court, Door, Figure, Hall, Marking, Obstacle, Source

LEAST_M, MOST_M = 2.0, 200.0  # our choice: no hall is narrower or longer
ENDS = {"north": ("west", "east"), "south": ("west", "east"), "east": ("south", "north"), "west": ("south", "north")}
_MEASURED = Source("told", "as measured by its teacher", "", None, "", "issuer's text")


@frozen
class _Box:
    """A rectangle in the hall, from its south-west corner."""

    x: float
    y: float
    long: float
    wide: float

    def within(self, size: SizeTold) -> bool:
        return (
            min(self.x, self.y) >= -1e-9
            and self.x + self.long <= size.length_m + 1e-9
            and self.y + self.wide <= size.width_m + 1e-9
        )

    def overlaps(self, other: _Box) -> bool:
        return (
            min(self.x + self.long, other.x + other.long) - max(self.x, other.x) > 1e-9
            and min(self.y + self.wide, other.y + other.wide) - max(self.y, other.y) > 1e-9
        )


def own_hall(told: HallTold, name: str = UNNAMED) -> Outcome[Hall]:
    """The hall that is told of, or what cannot be so."""
    findings = tuple(_findings(told, courts()))
    if findings:
        return Outcome(None, findings)
    size = told.sizes[0]
    long, wide = (Figure(metres, metres, metres, _MEASURED) for metres in (size.length_m, size.width_m))
    return Outcome(
        Hall(
            name,
            told.about,
            False,
            long,
            wide,
            doors=tuple(_door(each, size) for each in told.doors),
            obstacles=tuple(
                Obstacle(what, box.x, box.y, box.long, box.wide, _MEASURED) for what, box, _ in _things(told, size)
            ),
            markings=tuple(_marking(each, size, courts()) for each in told.lines),
        )
    )


def _error(title: Value, place: Span, hint: Value) -> Finding:
    return mistake("F-own-hall", title, place, hint)


def _findings(told: HallTold, known: Mapping[str, Court]) -> Iterator[Finding]:
    if not told.sizes:
        yield _error("Nothing says how large the hall is.", told.span, "Add: the hall is 15 m by 12 m")
        return
    wrong = (*_wrong_sizes(told.sizes), *_wrong_words(told, known))
    outside = wrong or tuple(_outside(told, told.sizes[0], known))
    yield from outside or _before_a_door(told, told.sizes[0])


def _wrong_sizes(sizes: tuple[SizeTold, ...]) -> Iterator[Finding]:
    for again in sizes[1:]:
        yield _error("The size of the hall is said twice.", again.span, "Take one of the two lines away.")
    size = sizes[0]
    if not (min(size.length_m, size.width_m) >= LEAST_M and max(size.length_m, size.width_m) <= MOST_M):
        yield _error(
            "No hall is of that size.",
            size.span,
            quoting("Write lengths from {least_m} m to {most_m} m.", least_m=f"{LEAST_M:g}", most_m=f"{MOST_M:g}"),
        )


def _wrong_words(told: HallTold, known: Mapping[str, Court]) -> Iterator[Finding]:
    """Ends that a wall does not have, two distances that run the same way, unknown lines."""
    ends: tuple[DoorTold | AlongTold, ...] = (*told.doors, *told.along)
    placed: tuple[StandingTold | LinesTold, ...] = (*told.standing, *told.lines)
    for each in ends:
        if each.end not in ENDS[each.wall]:
            one, other = ENDS[each.wall]
            hint = write(f"from its {one} end", f"from its {other} end")
            yield _error(quoting("The {wall} wall has no {end} end.", wall=each.wall, end=each.end), each.span, hint)
    for place in (each.place for each in placed):
        if place is not None and {wall in ("north", "south") for wall, _ in place.from_m} != {True, False}:
            apart = "Say it from a west or east wall, and from a north or south wall."
            yield _error("Both distances run the same way.", place.span, apart)
    for lines in told.lines:
        if lines.court not in known:
            names = perhaps_meant(lines.court, known) or quoting("The library has {names}.", names=listed(known))
            yield _error(quoting("The lines of a `{court}` are not known.", court=lines.court), lines.span, names)


def _outside(told: HallTold, size: SizeTold, known: Mapping[str, Court]) -> Iterator[Finding]:
    """What would lie outside the walls."""
    boxes = [
        *(("door", _along(_as_thing(each), size), each.span) for each in told.doors),
        *_things(told, size),
        *((f"{each.court}", _lines(each, size, known), each.span) for each in told.lines),
    ]
    for name, box, span in boxes:
        if min(box.long, box.wide) <= 0:
            yield _error(quoting("The {name} has no size.", name=name), span, "Write lengths above 0 m.")
        elif not box.within(size):
            hall = f"{size.length_m:g} m by {size.width_m:g} m"
            yield _error(
                quoting("The {name} does not lie in a hall of {hall}.", name=name, hall=hall),
                span,
                "Check its size and where it begins.",
            )


def _things(told: HallTold, size: SizeTold) -> Iterator[tuple[str, _Box, Span]]:
    """What is fixed along a wall or on the floor, where it stands, and the words that say so."""
    yield from ((each.name, _along(each, size), each.span) for each in told.along)
    for each in told.standing:
        yield each.name, _at(each.place, each.length_m, each.width_m, size), each.span


def _before_a_door(told: HallTold, size: SizeTold) -> Iterator[Finding]:
    """What stands where a door opens: one of both was measured wrongly."""
    for door in told.doors:
        for name, box, span in _things(told, size):
            if box.overlaps(_along(_as_thing(door), size)):
                title = quoting("The {name} stands before the door in the {wall} wall.", name=name, wall=door.wall)
                yield _error(title, span, "Check its size and where it begins.")


def _as_thing(door: DoorTold) -> AlongTold:
    """The floor that a door takes of its wall: no deeper than its own frame."""
    return AlongTold("door", door.wall, _width(door), 1e-3, door.end, door.from_m, door.span)


def _width(door: DoorTold) -> float:
    if door.width_m is not None:
        return door.width_m
    return norms().tables["space unknown"].rows["door width"][0].figure.usual


def _along(each: AlongTold, size: SizeTold) -> _Box:
    lying = each.wall in ("north", "south")
    whole = size.length_m if lying else size.width_m
    begins = each.from_m if each.end == ENDS[each.wall][0] else whole - each.from_m - each.long_m
    if lying:
        return _Box(begins, 0.0 if each.wall == "south" else size.width_m - each.deep_m, each.long_m, each.deep_m)
    return _Box(0.0 if each.wall == "west" else size.length_m - each.deep_m, begins, each.deep_m, each.long_m)


def _at(place: PlaceTold, long: float, wide: float, size: SizeTold) -> _Box:
    off = dict(place.from_m)
    x = off["west"] if "west" in off else size.length_m - off["east"] - long
    y = off["south"] if "south" in off else size.width_m - off["north"] - wide
    return _Box(x, y, long, wide)


def _lines(each: LinesTold, size: SizeTold, known: Mapping[str, Court]) -> _Box:
    court = known[each.court]
    long, wide = court.length_m.usual, court.width_m.usual
    along, across = (wide, long) if each.turned else (long, wide)
    if each.place:
        return _at(each.place, along, across, size)
    return _Box((size.length_m - along) / 2, (size.width_m - across) / 2, along, across)


def _door(each: DoorTold, size: SizeTold) -> Door:
    box = _along(_as_thing(each), size)
    middle = box.x + box.long / 2 if each.wall in ("north", "south") else box.y + box.wide / 2
    return Door(each.wall, middle, _width(each), _MEASURED)


def _marking(each: LinesTold, size: SizeTold, known: Mapping[str, Court]) -> Marking:
    box = _lines(each, size, known)
    return Marking(each.court, box.x + box.long / 2, box.y + box.wide / 2, each.turned, _MEASURED)
