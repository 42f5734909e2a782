"""Markings → where every player, ball, target and body is shown, each keeping its name from moment to moment.

A marking only counts. Which of the players waits is not said by the rules, so the last ones that moved in
are drawn as those that move on: a picture of the counts, not of persons.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping, Sequence
from math import ceil, hypot

from compose.net.net import Net, Place
from compose.staging.floor.ground import Ground
from compose.staging.floor.regions import regions
from compose.staging.floor.values import Floor, FloorItem, Rectangle
from grammar.core.values import AreaId, At, Landmark, OnStep, Part, Posture, Presence, SideId, Spot
from grammar.frozen import evolve, frozen

SHOWN = ("player", "ball", "load", "target", "body")
LYING = ("ball", "load")
APART_M = 0.9  # our choice: how far apart those stand for whom the set-up names no spot
CLEAR = 0.035  # of the court's length between a ball without a spot of its own and all else (our choice)
TOUCHING_M = 0.05  # our choice: nearer than this two signs are one
TRIES = 400
HALF_LIKE = (Landmark.HALF, Landmark.HANDS, Landmark.COURT)  # all over it, as the set-up spreads what lies there
STRIP_M = 1.0  # our choice: how broad a strip along a line is, where it is shown what lies there
OUT_M = 1.1  # our choice: how far beside the court those stand who are out


@frozen
class Token:
    """One thing in one moment. `key` is the same in every moment; `up` is False for a target that is down and for
    a player who is out."""

    key: str
    item: FloorItem
    up: bool = True


def scenes(
    net: Net, floor: Floor, ground: Ground, markings: Sequence[tuple[int, ...]]
) -> tuple[tuple[Token, ...], ...]:
    """The tokens of each marking; the same keys in the same order in all of them."""
    moved = _Moved(net, floor, ground)
    return tuple(moved.scene(marking) for marking in markings)


class _Moved:
    """Tokens in the places where they are, moved on as the counts change."""

    def __init__(self, net: Net, floor: Floor, ground: Ground) -> None:
        self.net, self.floor = net, floor
        self.groups: dict[str, dict[Hashable, list[int]]] = {}
        for number, place in enumerate(net.places):
            if place.token in SHOWN:
                self.groups.setdefault(_group(place), {}).setdefault(_home(place), []).append(number)
        self.parts = dict(self._parts())
        taken = [(item.x, item.y) for item in floor.items]
        numbers = [places[0] for homes in self.groups.values() for places in homes.values()]
        self.spots = {number: _Spots(net.places[number], floor, ground, taken) for number in numbers}
        self.at: dict[str, list[tuple[int, int]]] = {group: [] for group in self.groups}

    def scene(self, marking: tuple[int, ...]) -> tuple[Token, ...]:
        """Move as few as the counts ask for."""
        found: list[Token] = []
        for group, homes_of in self.groups.items():
            counts = {places[0]: [self._shown(each, marking[each]) for each in places] for places in homes_of.values()}
            self._move(self.at[group], {number: sum(each) for number, each in counts.items()})
            homes = [self.spots[number].at(slot) for number, slot in self.at[group]]
            found += (
                self._token(f"{group}/{order}", number, spot)
                for order, ((number, _slot), spot) in enumerate(zip(self.at[group], homes, strict=True))
            )
        return tuple(found)

    def _parts(self) -> Iterator[tuple[str, int]]:
        """Of how many parts a thing of each kind is built, as the set-up counts them."""
        for place in self.net.places:
            things = len(self.floor.items_of(str(place.kind), place.side)) if place.token == "target" else 0
            if things and place.start:
                yield str(place.kind), max(1, place.start // things)

    def _shown(self, number: int, count: int) -> int:
        """How many things a count stands for: several parts of one thing are drawn as that thing."""
        place = self.net.places[number]
        if place.token != "target":
            return count
        parts = self.parts.get(str(place.kind), 1)
        return ceil(count / parts) if place.standing is Posture.UP else count // parts

    def _move(self, at: list[tuple[int, int]], wanted: Mapping[int, int]) -> None:
        """Free what is too many in a place (its number turned negative), then fill what is short elsewhere."""
        short = []
        for number, count in wanted.items():
            here = sorted((slot for place, slot in at if place == number), reverse=True)
            for slot in here[: max(0, len(here) - count)]:
                at[at.index((number, slot))] = (~number, slot)
            short += [number] * (count - len(here))
        for number in short:
            taken = {slot for place, slot in at if place == number}
            free = self._freed(at, number)
            # A target that falls or is put up stays where it is.
            stays = free is not None and self._same_home(at[free], number) and at[free][1] not in taken
            slot = at[free][1] if stays and free is not None else min(set(range(len(taken) + 1)) - taken)
            if free is None:
                at.append((number, slot))
            else:
                at[free] = (number, slot)
        at[:] = [each for each in at if each[0] >= 0]

    def _freed(self, at: list[tuple[int, int]], number: int) -> int | None:
        """Which freed token moves to a place: one of its own side if there is one."""
        freed = [order for order, (place, _slot) in enumerate(at) if place < 0]
        return next((order for order in freed if self._same_home(at[order], number)), freed[0] if freed else None)

    def _same_home(self, freed: tuple[int, int], number: int) -> bool:
        old, new = self.net.places[~freed[0]], self.net.places[number]
        return new.token == "target" and old.side == new.side

    def _token(self, key: str, number: int, spot: tuple[float, float]) -> Token:
        place = self.net.places[number]
        like = self.spots[number].like
        role = place.kind if place.token == "player" else None
        up = place.standing not in (Posture.DOWN, Presence.OUT)
        return Token(key, evolve(like, x=spot[0], y=spot[1], side=place.side, role=role, on=None), up)


def _group(place: Place) -> str:
    if place.token == "player":
        return f"player/{place.side}"
    return f"{LYING[0] if place.token in LYING else place.token}/{place.kind}"  # carried or lying, it is the same thing


def _home(place: Place) -> Hashable:
    """Where it is shown: how many lives a player has left is not to be seen."""
    return (place.kind, place.standing, place.load) if place.token == "player" else place.name


def _in_play(place: Place) -> bool:
    """Whether it counts players in play with free hands."""
    return place.token == "player" and place.standing is Presence.PLAYING and place.load is None


def _at(place: Place, landmark: Landmark) -> bool:
    """Whether it counts what lies at a landmark."""
    match place.standing:
        case At(Spot(of, _, part)):
            return place.token in LYING and of is landmark and part is Part.AT
    return False


class _Spots:
    """Where the tokens of a place stand: first as the set-up says, then side by side in what room there is."""

    def __init__(self, place: Place, floor: Floor, ground: Ground, taken: list[tuple[float, float]]) -> None:
        self.floor, self.ground, self.place, self.taken = floor, ground, place, taken
        self.known = list(self._set_up())
        items = floor.players_of(place.side) if place.token == "player" else floor.items_of(str(place.kind))
        size = (0.5, 1.4) if place.token == "player" else (0.2, 0.2)
        self.like = items[0] if items else FloorItem(place.kind or "player", place.token, None, 0.0, 0.0, *size)
        if isinstance(place.standing, OnStep):
            track = next((track for track in floor.tracks), None)
            if track is not None:
                row = track.row(place.standing.step)
                ys = [item.y for item in items] or [row.centre[1]]
                self.known = [(row.left, y) for y in ys]
        self._more = _grid(self._region())

    def at(self, slot: int) -> tuple[float, float]:
        """The spot of a slot."""
        while len(self.known) <= slot:
            self.known.append(self._next())
        return self.known[slot]

    def _next(self) -> tuple[float, float]:
        """The next free spot; after some tries any spot, since a full place is full."""
        spot = next(self._more)
        waiting = self.place.token == "player" and not _in_play(self.place)
        # Who waits may stand close, but two of different tasks that wait in one place not on one spot.
        clear_m = TOUCHING_M if waiting else CLEAR * self.floor.length_m
        for _try in range(TRIES):
            if all(hypot(spot[0] - x, spot[1] - y) >= clear_m for x, y in self.taken):
                break
            spot = next(self._more)
        self.taken.append(spot)
        return spot

    def _set_up(self) -> Iterator[tuple[float, float]]:
        place = self.place
        if place.token == "target":
            yield from ((item.x, item.y) for item in self.floor.items_of(str(place.kind), place.side))
        elif place.token in LYING:
            near = place.side if _at(place, Landmark.HALF) else None
            items = self.floor.items_of(str(place.kind))
            yield from ((item.x, item.y) for item in items if near is not None and item.near == near)
            if near is None and place.start:
                yield from ((item.x, item.y) for item in items if item.near is None)
        elif _in_play(place):
            inside = self.floor.players_of(place.side)
            yield from ((item.x, item.y) for item in inside if not self._aside(item) and item.role == place.kind)

    def _area(self) -> Rectangle | None:
        """The area in which the tokens of this place are, of the side whose it is."""
        at = self.place.standing
        if not isinstance(at, At) or not isinstance(at.spot.of, AreaId) or at.spot.part is not Part.AT:
            return None
        own = (at.spot.of.key, at.spot.owner.key if isinstance(at.spot.owner, SideId) else None)
        return next((area.rectangle for area in self.floor.areas if (area.name, area.owner) == own), None)

    def _aside(self, item: FloorItem) -> bool:
        named = (area for area in self.floor.areas if area.kind in ("bench", "queue"))
        return any(area.rectangle.grown(0.3).holds(item.x, item.y) for area in named)

    def _region(self) -> Rectangle:
        """The room of a place: its area, the half it names, a strip beside the court for those who are out."""
        court = self.floor.court
        half = self.floor.half_of(str(self.place.side)) or court
        if self.place.standing is Presence.OUT:
            return Rectangle(half.left, court.bottom - OUT_M, half.right, court.bottom - 0.3)
        area = self._area()
        if area is not None:
            return area
        if _at(self.place, Landmark.MIDDLE):
            x, y = court.centre
            return Rectangle(x - 1.0, y - 1.0, x + 1.0, y + 1.0)
        return self._by_a_line() or half.grown(-0.8)

    def _by_a_line(self) -> Rectangle | None:
        """Where a thing lies that is at a line, a wall or a corner, or before, beside or behind a place."""
        at = self.place.standing
        if self.place.token not in LYING or not isinstance(at, At):
            return None
        if at.spot.part is Part.AT and (isinstance(at.spot.of, AreaId) or at.spot.of in HALF_LIKE):
            return None
        return regions(self.ground, at.spot, STRIP_M)[0].rectangle


def _grid(box: Rectangle) -> Iterator[tuple[float, float]]:
    """Spots in rows over a rectangle; once it is full, between those that are there."""
    apart = APART_M
    while True:
        columns, rows = max(1, int(box.length / apart)), max(1, int(box.width / apart))
        for row in range(rows):
            for column in range(columns):
                yield (
                    box.left + box.length * (column + 0.5) / columns,
                    box.top - box.width * (row + 0.5) / rows,
                )
        apart *= 0.7
