"""Where the courts of a class lie, and where the players of each court act."""

from __future__ import annotations

from collections.abc import Mapping
from math import sqrt

from compose.staging.floor.covered import left_free_m2
from compose.staging.floor.ground import ground_under
from compose.staging.floor.homes import standing
from compose.staging.floor.values import Floor, Rectangle
from compose.staging.room import BETWEEN_M, Room, in_rows
from grammar.core.declared import Doing
from grammar.core.game import Play
from grammar.core.values import PLAIN, Laden, Population, RoleId, SideId
from grammar.frozen import frozen


@frozen
class Acting:
    """So many players of a side and a role ("" for none), and the floors of the court from which they act."""

    side: str
    role: str
    count: int
    floors: tuple[Rectangle, ...]

    @property
    def population(self) -> Population:
        """Who they are in the core."""
        return Population(SideId(self.side), RoleId(self.role) if self.role else PLAIN)


@frozen
class Court:
    """One game of a class. `players` are those of each side; `floor` is in the court's own metres.

    `box` is where the floor with all that lies beside the court is: in the hall, from its south-west corner, or,
    where nobody says which hall, among the other courts. `turned` where the court's length runs along y there.
    `fixed` is what of it lies under things that stand fixed in the hall, in the court's own metres.
    """

    players: Mapping[str, int]
    floor: Floor
    acting: tuple[Acting, ...]
    box: Rectangle
    turned: bool
    fixed: tuple[Rectangle, ...] = ()


def acting_on(play: Play, floor: Floor) -> tuple[Acting, ...]:
    """The players of a floor by side and role, with where they act."""
    ground, found = ground_under(floor, play), list[Acting]()
    for who in play.populations():
        if isinstance(who.role, Laden):
            continue
        role = "" if who.role is PLAIN else who.role.key
        here = sum((item.role or "") == role for item in floor.players_of(who.side.key))
        if here:
            found.append(Acting(who.side.key, role, here, tuple(standing(play, ground, who))))
    return tuple(found)


def space_m2(court: Court) -> float:
    """The court's floor for each player on it at the start, without what nobody enters and what stands in it; those
    count for whom no place was found, too."""
    floor, whole = court.floor, court.floor.court
    shut = (area.rectangle for area in floor.areas if Doing.ENTER in area.shut)
    beside = sum(item.category == "player" and not whole.holds(item.x, item.y) for item in floor.items)
    return left_free_m2([whole], [*shut, *court.fixed]) / max(1, sum(court.players.values()) - beside)


def boxes_of(floor: Floor, courts: int, room: Room | None) -> tuple[Rectangle, ...]:
    """Where each of so many courts lies: in the hall if there is one, else row by row with the usual gap."""
    if room is not None:
        return room.boxes
    long, wide = floor.extent.length, floor.extent.width
    return tuple(in_rows(long, wide, courts, _columns(long, wide, courts)))


def _columns(long: float, wide: float, courts: int) -> int:
    """So many courts beside each other that all together are about as long as wide, half as long again at most."""
    return max(1, min(courts, round(sqrt(1.5 * courts * (wide + BETWEEN_M) / (long + BETWEEN_M)))))
