"""What stands on the floor at the start: kit and players, by the placings of the set-up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from attrs import define, field, frozen

from compose.net.floor_regions import Ground, Region, regions
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning, SideMeaning
from grammar.sentences.base import Name, Np, Owner, OwnerName
from grammar.sentences.play import Stay
from grammar.sentences.sides import Placing
from grammar.span import Span

# Assumptions for things whose size nobody gave: width and height in metres. A player is a circle that
# a standing pupil fills with the elbows out.
USUAL_SIZE_M = {"target": (0.3, 0.4), "ring": (0.6, 0.6), "body": (0.8, 0.8), "ball": (0.2, 0.2),
                "furniture": (0.5, 0.5), "player": (0.5, 1.4)}


OWN_PART = "in their part of the court"
EVERY = ("each", "every", "all", "their")


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
        return width or usual[0], height or usual[1]

    def take(self, name: str, side: str | None, role: str | None, wanted: int | None, total: int) -> tuple[int, int]:
        """How many of the wanted are left to place (None: all), and the number of the first."""
        first = self.used[name, side, role]
        count = total - first if wanted is None else min(wanted, total - first)
        self.used[name, side, role] += max(count, 0)
        return max(count, 0), first


def batches(muster: Muster) -> Iterator[Batch]:
    """Every batch: fixed things first, then balls, then players, so that the movable make room."""
    kit = [placing for placing in muster.game.placings if not _is_players(muster.game, placing)]
    people = [placing for placing in muster.game.placings if _is_players(muster.game, placing)]
    balls = [placing for placing in kit if _category(muster.game, placing) == "ball"]
    for placing in (*(placing for placing in kit if placing not in balls), *balls):
        yield from _kit_batches(muster, placing)
    for placing in people:
        yield from _player_batches(muster, placing)
    yield from _unplaced_players(muster)


def _is_players(game: Game, placing: Placing) -> bool:
    return isinstance(game.meaning(placing.what.name), PlayerMeaning)


def _category(game: Game, placing: Placing) -> str:
    meaning = game.meaning(placing.what.name)
    return meaning.category if isinstance(meaning, KitMeaning | CategoryMeaning) else ""


def _lines(game: Game, name: Name) -> Iterator[GameKit]:
    meaning = game.meaning(name)
    if isinstance(meaning, KitMeaning):
        yield game.kit_named(meaning.key)
    elif isinstance(meaning, CategoryMeaning):
        yield from (line for line in game.kit if line.category == meaning.category)


def side_named(game: Game, owner: Owner | OwnerName | None, own: str | None) -> str | None:
    """The side that an owner phrase means, seen from the side `own`."""
    sides = [side.name for side in game.sides]
    if isinstance(owner, OwnerName):
        meaning = game.meaning(owner.name)
        return meaning.side if isinstance(meaning, SideMeaning | PlayerMeaning) else None
    if isinstance(owner, Owner) and owner.other and own in sides and len(sides) == 2:
        return next(side for side in sides if side != own)
    return own


def _kit_batches(muster: Muster, placing: Placing) -> Iterator[Batch]:
    game, wanted = muster.game, placing.count.whole if placing.count else None
    sides = [side.name for side in game.sides]
    for line in _lines(game, placing.what.name):
        size = muster.size_of(line)
        if line.owner == "each":
            only = side_named(game, placing.what.owner, None)
            owners: list[str | None] = [side for side in sides if only in (None, side)]
        else:
            owners = [line.owner if line.owner in sides else None]
        for owner in owners:
            spots = list(_spots(muster, placing, owner))
            every = len(spots) == 1 or placing.where.determiner in EVERY
            left = line.count - muster.used[line.name, owner, None]
            left = left if wanted is None else min(left, wanted)
            for order, (region, on) in enumerate(spots):
                # "5 balls in each half" is five for every spot; "the balls in the corners" are shared out.
                part = wanted if wanted is not None and every else -(-left // (len(spots) - order))
                count, first = muster.take(line.name, owner, None, part, line.count)
                left -= count
                yield Batch(line.name, line.category, owner, None, count, first, region, _told(placing),
                            placing.spread, size, placing.span, on, placing.preposition)


def _spots(muster: Muster, placing: Placing, owner: str | None) -> Iterator[tuple[Region, str | None]]:
    """The regions that a placing means for the things of one owner, and the thing they are put upon."""
    game, where = muster.game, placing.where
    meaning = game.meaning(where.name)
    side = side_named(game, where.owner, owner)
    if isinstance(meaning, PlaceMeaning):
        found = regions(muster.ground, meaning.place, placing.preposition, side, None)
        several = where.determiner in EVERY or where.name.text != meaning.place or where.owner is not None
        for region in found if several else found[:1]:
            yield region, None
    elif isinstance(meaning, KitMeaning):
        yield Region(muster.ground.court, side), meaning.key
    elif isinstance(meaning, CategoryMeaning):
        yield Region(muster.ground.court, side), meaning.category


def _told(placing: Placing) -> str:
    return f"{placing.preposition} {placing.where.words()}"


def _player_batches(muster: Muster, placing: Placing) -> Iterator[Batch]:
    game = muster.game
    meaning = game.meaning(placing.what.name)
    assert isinstance(meaning, PlayerMeaning)
    only = meaning.side or side_named(game, placing.what.owner, None)
    for side in game.sides:
        if only not in (None, side.name):
            continue
        for role, total in _groups(muster, side.name):
            if meaning.role in (None, role):
                yield from _shared(muster, placing, side.name, role, total)


def _shared(muster: Muster, placing: Placing, side: str, role: str | None, total: int) -> Iterator[Batch]:
    """The players of one side and role over the places that a placing means."""
    wanted = placing.count.whole if placing.count else None
    spots = list(_spots(muster, placing, side))
    left = total - muster.used["player", side, role]
    left = left if wanted is None else min(left, wanted)
    for order, (region, on) in enumerate(spots):
        every = wanted is not None and placing.where.determiner in EVERY
        count, first = muster.take("player", side, role, wanted if every else -(-left // (len(spots) - order)), total)
        left -= count
        yield Batch("player", "player", side, role, count, first, region, _told(placing), placing.spread,
                    USUAL_SIZE_M["player"], placing.span, on, placing.preposition)


def _groups(muster: Muster, side: str) -> list[tuple[str | None, int]]:
    """The roles of a side with their counts, then the players without a role.

    A role has as many as `players` says under "side role" ("north keeper"), else the fewest allowed.
    """
    left = muster.players.get(side, 0)
    found: list[tuple[str | None, int]] = []
    for role in muster.game.roles:
        if role.side in (None, side):
            count = min(muster.players.get(f"{side} {role.name}", role.least), left)
            found.append((role.name, count))
            left -= count
    return [*found, (None, left)]


def _unplaced_players(muster: Muster) -> Iterator[Batch]:
    """Players that the set-up does not speak of start where they stay, else in their part of the court."""
    for side in muster.game.sides:
        for role, total in _groups(muster, side.name):
            count, first = muster.take("player", side.name, role, None, total)
            region, where = home(muster.game, muster.ground, side.name, role)
            if count:
                yield Batch("player", "player", side.name, role, count, first, region, where, None,
                            USUAL_SIZE_M["player"], side.span)


def home(game: Game, ground: Ground, side: str, role: str | None) -> tuple[Region, str]:
    """Where the players of a side stay by the rules of play, else their equal part of the court."""
    for stay in stays(game, side, role):
        meaning = game.meaning(stay.where.name)
        if isinstance(meaning, PlaceMeaning) and meaning.place != "court":
            whose = side_named(game, stay.where.owner, side)
            if stay.where.other:
                whose = side_named(game, Owner("the", "other"), side)
            where = f"{stay.preposition} {stay.where.words()}"
            return regions(ground, meaning.place, stay.preposition, whose, None)[0], where
    return Region(ground.slice_of(side), side, ground.facing(side)), OWN_PART


def stays(game: Game, side: str, role: str | None) -> Iterator[Stay]:
    """The sentences that say where such a player stays, those about the role before those about all."""
    found = []
    for stay in game.all_of("play", Stay):
        meaning = game.meaning(stay.who.name)
        fits = isinstance(meaning, PlayerMeaning) and meaning.side in (None, side) and meaning.role in (None, role)
        if fits and side_named(game, stay.who.owner, side) == side:
            found.append((isinstance(meaning, PlayerMeaning) and meaning.role is None, stay))
    yield from (stay for _general, stay in sorted(found, key=lambda pair: pair[0]))


def owner_of(game: Game, phrase: Np, own: str | None) -> str | None:
    """The side whose things a phrase names, seen from `own`: "the lanterns of the other side"."""
    return side_named(game, Owner("the", "other") if phrase.other else phrase.owner, own)
