"""What is put on the floor at the start: the kit, by the placings of the set-up, batch by batch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from attrs import define, field, frozen

from compose.staging.floor.phrases import EVERY, kit_lines, side_named, spots
from compose.staging.floor.regions import Ground, Region
from compose.staging.floor.tracks import track_of
from grammar.game import Game, GameKit
from grammar.sentences.sides import Placing, PlacingOnStep
from grammar.span import Span

# Assumptions for things whose size nobody gave: width and height in metres. A player is a circle that
# a standing pupil fills with the elbows out.
USUAL_SIZE_M = {
    "target": (0.3, 0.4),
    "ring": (0.6, 0.6),
    "body": (0.8, 0.8),
    "ball": (0.2, 0.2),
    "furniture": (0.5, 0.5),
    "player": (0.5, 1.4),
}


@frozen
class Batch:
    """Things of one kind that go to one region in one pattern. `first` numbers them within their owner.

    Where the region is another thing, `on` is its name or category and `preposition` says where beside it.
    """

    name: str
    category: str
    side: str | None
    role: str | None
    count: int
    first: int
    region: Region
    where: str
    how: str | None
    size_m: tuple[float, float]
    span: Span = field(eq=False)
    on: str | None = None
    preposition: str = "on"


@define
class Muster:
    """How many of each thing have been placed so far, by name, owner and role."""

    game: Game
    ground: Ground
    players: Mapping[str, int]
    sizes: Mapping[str, tuple[float, float]]
    used: Counter[tuple[str, str | None, str | None]] = field(factory=Counter)

    def size_of(self, line: GameKit) -> tuple[float, float]:
        """Width and height in metres; for what the catalogue does not measure, what is usual."""
        usual = USUAL_SIZE_M[line.category]
        width, height = self.sizes.get(line.name) or self.sizes.get(line.like) or usual
        return (width or usual[0]) * line.scale, (height or usual[1]) * line.scale

    def count_of(self, line: GameKit, owner: str | None) -> int:
        """How many of a line's things an owner has; a thing of several parts is one thing."""
        return line.count * (self.players.get(owner or "", 0) if line.per_player else 1)

    def wanted(self, placing: Placing, total: int) -> int | None:
        """How many a placing asks for of `total`; None for all that are left."""
        if placing.count is None:
            return None
        return max(total - placing.count.whole, 0) if placing.all_but else placing.count.whole

    def take(self, name: str, side: str | None, role: str | None, wanted: int | None, total: int) -> tuple[int, int]:
        """How many of the wanted are left to place (None: all), and the number of the first."""
        first = self.used[name, side, role]
        count = total - first if wanted is None else min(wanted, total - first)
        self.used[name, side, role] += max(count, 0)
        return max(count, 0), first


def kit_batches(muster: Muster) -> Iterator[Batch]:
    """Every batch of kit: fixed things first, then balls, so that the movable make room."""
    for ball in (False, True):
        for placing in muster.game.placings:
            for line in kit_lines(muster.game, placing.what.name):
                if (line.category == "ball") == ball:
                    yield from _of_line(muster, placing, line)
        for step in muster.game.all_of("set-up", PlacingOnStep):
            for line in kit_lines(muster.game, step.what.name):
                if (line.category == "ball") == ball:
                    yield from _on_step(muster, step, line)


def _owners(muster: Muster, placing: Placing | PlacingOnStep, line: GameKit) -> list[str | None]:
    sides = [side.name for side in muster.game.sides]
    if line.owner == "each":
        only = side_named(muster.game, placing.what.owner, None)
        return [side for side in sides if only in (None, side)]
    return [line.owner if line.owner in sides else None]


def _of_line(muster: Muster, placing: Placing, line: GameKit) -> Iterator[Batch]:
    for owner in _owners(muster, placing, line):
        total = muster.count_of(line, owner)
        wanted = muster.wanted(placing, total)
        found = spots(muster.game, muster.ground, placing, owner)
        every = len(found) == 1 or placing.where.determiner in EVERY
        left = total - muster.used[line.name, owner, None]
        left = left if wanted is None else min(left, wanted)
        for order, (region, on) in enumerate(found):
            # "5 balls in each half" is five for every spot; "the balls in the corners" are shared out.
            part = wanted if wanted is not None and every else -(-left // (len(found) - order))
            count, first = muster.take(line.name, owner, None, part, total)
            left -= count
            yield Batch(
                line.name,
                line.category,
                owner,
                None,
                count,
                first,
                region,
                told(placing),
                placing.spread,
                muster.size_of(line),
                placing.span,
                on,
                placing.preposition,
            )


def _on_step(muster: Muster, placing: PlacingOnStep, line: GameKit) -> Iterator[Batch]:
    track = track_of(muster.game, muster.ground, placing.track.name.text)
    if track is None:
        return
    for owner in _owners(muster, placing, line):
        count, first = muster.take(line.name, owner, None, None, muster.count_of(line, owner))
        region = Region(track.row(placing.step.whole), None, 1, "across")
        yield Batch(
            line.name,
            line.category,
            owner,
            None,
            count,
            first,
            region,
            placing.words(),
            None,
            muster.size_of(line),
            placing.span,
        )


def told(placing: Placing) -> str:
    """Where, in the words of the set-up."""
    return f"{placing.preposition} {placing.where.words()}"
