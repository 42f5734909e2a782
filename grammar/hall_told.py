"""What lines about a hall say, as values; whether it can be so is for others to say. Lengths are in metres."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.frozen import field, frozen
from grammar.sentences.base import Node
from grammar.sentences.hall_sheet import AlongWall, FloorLines, FromWalls, HallDoor, HallSize, OnTheFloor
from grammar.sentences.head import Told
from grammar.span import Span
from grammar.tree import HallSheet

COMPASS = ("north", "east", "south", "west")
_WALLS = {f"the {wall} wall": wall for wall in COMPASS}
_ENDS = {f"from its {end} end": end for end in COMPASS}


@frozen
class SizeTold:
    """Length runs from west to east."""

    length_m: float
    width_m: float
    span: Span = field(eq=False)


@frozen
class DoorTold:
    """A door begins so far from an end of its wall; None: nobody said how wide it is."""

    wall: str
    end: str
    from_m: float
    width_m: float | None
    span: Span = field(eq=False)


@frozen
class AlongTold:
    """Something fixed at a wall: how long along it, how deep, and where it begins."""

    name: str
    wall: str
    long_m: float
    deep_m: float
    end: str
    from_m: float
    span: Span = field(eq=False)


@frozen
class PlaceTold:
    """How far the nearer edges are from two walls."""

    from_m: tuple[tuple[str, float], tuple[str, float]]
    span: Span = field(eq=False)


@frozen
class StandingTold:
    """Something fixed away from the walls; its length runs from west to east."""

    name: str
    length_m: float
    width_m: float
    place: PlaceTold
    span: Span = field(eq=False)


@frozen
class LinesTold:
    """The lines of a court, in the middle where no place is given."""

    court: str
    turned: bool
    place: PlaceTold | None
    span: Span = field(eq=False)


@frozen
class HallTold:
    """All that is said of a hall, in the order of the sheet; `span` is where it begins."""

    title: str
    about: str
    span: Span = field(eq=False)
    sizes: tuple[SizeTold, ...] = ()
    doors: tuple[DoorTold, ...] = ()
    along: tuple[AlongTold, ...] = ()
    standing: tuple[StandingTold, ...] = ()
    lines: tuple[LinesTold, ...] = ()

    @property
    def says_something(self) -> bool:
        """Whether there is any line about the hall."""
        return bool(self.sizes or self.doors or self.along or self.standing or self.lines)


def hall_told(sheet: HallSheet) -> HallTold:
    """The sheet's sentences as values."""
    return told_of(sheet.title, [line.sentence for line in sheet.lines], sheet.span)


def told_of(title: str, said: Iterable[Node], span: Span) -> HallTold:
    """What sentences, of a hall's own sheet or of its class's, say about a hall."""
    every = tuple(said)
    return HallTold(
        title,
        " ".join(each.text for each in every if isinstance(each, Told) and each.topic == "about"),
        span,
        tuple(
            SizeTold(each.length.metres, each.width.metres, each.span) for each in every if isinstance(each, HallSize)
        ),
        tuple(_door(each) for each in every if isinstance(each, HallDoor)),
        tuple(_along(each) for each in every if isinstance(each, AlongWall)),
        tuple(_standing(each) for each in every if isinstance(each, OnTheFloor)),
        tuple(_lines(each) for each in every if isinstance(each, FloorLines)),
    )


def _door(said: HallDoor) -> DoorTold:
    wide = said.width.metres if said.width else None
    return DoorTold(_WALLS[said.wall], _ENDS[said.end], said.distance.metres, wide, said.span)


def _along(said: AlongWall) -> AlongTold:
    size = said.length.metres, said.depth.metres
    return AlongTold(said.name.text, _WALLS[said.wall], *size, _ENDS[said.end], said.distance.metres, said.span)


def _standing(said: OnTheFloor) -> StandingTold:
    return StandingTold(said.name.text, said.length.metres, said.width.metres, _place(said.place), said.span)


def _lines(said: FloorLines) -> LinesTold:
    place = _place(said.place) if said.place else None
    return LinesTold(said.court.text, said.across is not None, place, said.span)


def _place(said: FromWalls) -> PlaceTold:
    walls = (_WALLS[said.one_wall], said.one.metres), (_WALLS[said.other_wall], said.other.metres)
    return PlaceTold(walls, said.span)
