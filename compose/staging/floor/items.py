"""What is put on the floor at the start: the kit, by the set-up, batch by batch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from typing import assert_never

from attrs import define, field

from compose.staging.floor.ground import Ground, Region
from compose.staging.floor.regions import regions
from compose.staging.floor.tracks import track_on
from grammar.core.declared import All, AllBut, Kind, Per, Start
from grammar.core.game import Core, Line
from grammar.core.play import PickUp
from grammar.core.values import Landmark, OnStep, Population, SideId, Sort, Spot, Spread, Thing, Upon
from grammar.frozen import evolve, frozen

Size = tuple[float, float]  # width and height in metres

# Assumptions for things whose size nobody gave: width and height in metres.
USUAL_SIZE_M: Mapping[Sort, Size] = {
    Sort.TARGET: (0.3, 0.4),
    Sort.LOAD: (0.3, 0.4),
    Sort.RING: (0.6, 0.6),
    Sort.BODY: (0.8, 0.8),
    Sort.BALL: (0.2, 0.2),
    Sort.FURNITURE: (0.5, 0.5),
}
UNSPREAD = (None, Spread.CLOSE)  # nothing is said of things that they stand in a row or a ring
HANDFUL_M = 0.3  # assumption: what a pupil carries in one hand is at most so wide, and lies in a heap


@frozen
class Batch:
    """Things of one kind that go to one region in one pattern. `first` numbers them within their owner.

    Where they go to things of another kind instead, `upon` says to which and where; `line` is why they are there.
    Where no floor is free they lie in a heap with things of the kinds of `heap`.
    """

    name: str
    category: str
    side: SideId | None
    role: str | None
    count: int
    first: int
    region: Region
    how: Spread | None
    size_m: Size
    line: Line = field(eq=False)
    upon: Upon | None = None
    heap: frozenset[str] = frozenset()


@define
class Muster:
    """How many of each thing and population have been placed so far."""

    core: Core
    ground: Ground
    players: Mapping[SideId, int]
    sizes_m: Mapping[str, Size]
    used: Counter[Thing | Population] = field(factory=Counter)

    def size_of(self, kind: Kind) -> Size:
        """Width and height in metres; for what nobody measured, what is usual."""
        usual = USUAL_SIZE_M[kind.sort]
        width, height = self.sizes_m.get(kind.like.key, usual)
        return (width or usual[0]) * float(kind.scale), (height or usual[1]) * float(kind.scale)

    @property
    def heaped(self) -> frozenset[str]:
        """What may lie in one heap: small things that are taken from place to place."""
        tried = (attempt for offer in self.core.play.offers for attempt in offer.attempts)
        taken = {attempt.ball for attempt in tried if isinstance(attempt.aim, PickUp)}
        small = (kind for kind in self.core.play.kinds if self.size_of(kind)[0] <= HANDFUL_M)
        return frozenset(kind.id.key for kind in small if kind.id in taken)

    def count_of(self, thing: Thing) -> int:
        """How many there are of a thing; one of several parts is one thing."""
        total = 0
        for supply in self.core.play.supplies:
            if supply.thing == thing:
                whose = self.players.get(thing.owner, 0) if isinstance(thing.owner, SideId) else self.everybody
                total += supply.count * (whose if supply.per is Per.PLAYER else 1)
        return total

    @property
    def everybody(self) -> int:
        return sum(self.players.values())

    def take(self, what: Thing | Population, wanted: int, total: int) -> tuple[int, int]:
        """How many of the wanted are left to place, and the number of the first."""
        first = self.used[what]
        count = max(min(wanted, total - first), 0)
        self.used[what] += count
        return count, first


def kit_batches(muster: Muster) -> Iterator[Batch]:
    """Every batch of kit: fixed things first, then balls, so that the movable make room."""
    for balls in (False, True):
        for start, number in shared_out(muster, muster.core.play.starts):
            if not isinstance(start.what, Thing):
                continue
            kind = muster.core.play.kind(start.what.kind)
            if (kind.sort is Sort.BALL) == balls:
                yield from _of_start(muster, start, number, kind)


def shared_out(muster: Muster, starts: Sequence[Start]) -> Iterator[tuple[Start, int | None]]:
    """Each start with its part of those that a line puts at several places; None for one that says its number. These
    come first: a line without a number has what the others leave."""
    in_turn = sorted(starts, key=lambda start: not isinstance(start.count, int))
    for _, together in groupby(in_turn, key=lambda start: (start.what, start.lines, start.count)):
        group = list(together)
        for order, start in enumerate(group):
            yield start, None if isinstance(start.count, int) else len(group) - order


def _of_start(muster: Muster, start: Start, sharing: int | None, kind: Kind) -> Iterator[Batch]:
    thing = start.what
    assert isinstance(thing, Thing)
    total = muster.count_of(thing)
    wanted = wanted_of(start, total, muster.used[thing], sharing)
    line = muster.core.lines[start.lines[0]]
    owner = thing.owner if isinstance(thing.owner, SideId) else None
    for region, upon, count in _parts(muster, start, owner, wanted):
        taken, first = muster.take(thing, count, total)
        size = muster.size_of(kind)
        name, sort = kind.id.key, (Sort.TARGET if kind.sort is Sort.LOAD else kind.sort).value
        heap = muster.heaped if start.spread in UNSPREAD and name in muster.heaped else frozenset[str]()
        yield Batch(name, sort, owner, None, taken, first, region, start.spread, size, line, upon, heap)


def wanted_of(start: Start, total: int, used: int, sharing: int | None) -> int:
    """How many go there: as many as the line says, else an equal part of those that are left."""
    match start.count:
        case int():
            return start.count
        case AllBut(count):
            left = total - count - used
        case All():
            left = total - used
        case _:
            assert_never(start.count)
    return -(-max(left, 0) // (sharing or 1))


def _parts(
    muster: Muster, start: Start, owner: SideId | None, wanted: int
) -> Iterator[tuple[Region, Upon | None, int]]:
    """The stretches of one start, each with its part of the things."""
    match start.at:
        case Upon():
            yield Region(muster.ground.court, owner), start.at, wanted
        case OnStep():
            track = next((each for each in muster.core.play.tracks if each.id == start.at.track), None)
            if track is not None:
                row = track_on(muster.ground, track).row(start.at.step)
                yield Region(row, None, 1, "across"), None, wanted
        case Spot():
            spot = evolve(start.at, of=Landmark.MIDDLE_LINE) if start.on_middle_line else start.at
            for region, count in dealt(regions(muster.ground, spot, None, owner), wanted):
                yield region, None, count
        case _:
            assert_never(start.at)


def dealt(found: Sequence[Region], number: int) -> Iterator[tuple[Region, int]]:
    """So many shared out over some stretches, the first ones before the last."""
    for order, region in enumerate(found):
        count = -(-number // (len(found) - order))
        number -= count
        yield region, count
