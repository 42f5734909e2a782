"""Players, balls, things and points as places of the net: one place for each standing of each kind of token."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.lives import left_at, lives_at
from compose.net.net import Place
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Per
from grammar.core.game import Play
from grammar.core.guards import BallsAt
from grammar.core.play import Along
from grammar.core.rules import Add
from grammar.core.values import (
    PLAIN,
    AreaId,
    At,
    KindId,
    Laden,
    Landmark,
    OnStep,
    Owner,
    Part,
    Population,
    Posture,
    Presence,
    SideId,
    Sort,
    Spot,
    Thing,
    without_load,
)

PRESENCES = {Presence.PLAYING: "in", Presence.OUT: "out"}
CLOCK = "clock"
POINTS_COUNTED_TO = 25  # where nothing asks for a number of them: our choice
POSTURES = {Posture.UP: "standing", Posture.DOWN: "down"}


def owner_key(owner: Owner) -> str | None:
    """The name of a side, None for nobody."""
    return owner.key if isinstance(owner, SideId) else None


def player_place(builder: Builder, who: Population, standing: Presence | At, lives: int | None = None) -> int:
    """The place of players of a population who are in play, out, or at a spot.

    They have so many `lives` left, where lives are counted: all of them if nothing is said. Who has just lost the
    last life is still counted with those in play who have one.
    """
    standing = builder.counted_as(who, standing)
    there = lives_at(builder.play, builder.kept, who, standing)
    lives = (there[0] if lives is None else max(lives, there[-1])) if there else None
    key = ("player", who, standing, lives)
    if (found := builder.number(key)) is not None:
        return found
    task = without_load(who.role)
    role = None if task is PLAIN else task.key
    load = who.role if isinstance(who.role, Laden) else None
    name = f"player/{who.side.key}/{role or '-'}/{_standing_name(standing, who.side)}"
    if load is not None:
        name += f"/{load.kind.key}/{_spot_name(load.start)}/{owner_key(load.start.owner) or '-'}"
    if lives is not None:
        name += f"/{lives}"
    total = sum(builder.players.values()) if builder.sides_change else builder.players[who.side]
    area = _area_of(builder, standing)
    place = Place(
        name,
        "player",
        total,
        0,
        who.side.key,
        role,
        final=area is not AreaKind.QUEUE and not (isinstance(standing, At) and standing.spot.is_frozen),
        standing=standing,
        area=area,
        lives=lives,
        load=load,
    )
    return builder.add_place(key, place)


def place_reached(builder: Builder, who: Population, standing: Presence | At, lives: int | None = None) -> int:
    """The place to which somebody comes who has so many lives left: of 0 all again, of those in play."""
    return player_place(builder, who, standing, left_at(builder.play, builder.kept, who, standing, lives))


def _standing_name(standing: Presence | At, side: SideId) -> str:
    if isinstance(standing, At):
        spot = standing.spot
        foreign = isinstance(spot.owner, SideId) and spot.owner != side
        return f"{_spot_name(spot)}/{owner_key(spot.owner)}" if foreign else _spot_name(spot)
    return PRESENCES[standing]


def _area_of(builder: Builder, standing: Presence | At) -> AreaKind | None:
    area = builder.play.area(standing.spot) if isinstance(standing, At) else None
    return area.kind if area is not None else None


def in_play(builder: Builder, *who: Population) -> tuple[int, ...]:
    """The places of these populations in play: one for each number of lives, where lives are counted."""
    return tuple(place for each in who for place in places_at(builder, each, Presence.PLAYING))


def places_at(builder: Builder, who: Population, standing: Presence | At) -> tuple[int, ...]:
    """The places of a population that stands so."""
    standing = builder.counted_as(who, standing)
    there = lives_at(builder.play, builder.kept, who, standing)
    return tuple(player_place(builder, who, standing, lives) for lives in there or (None,))


def side_in_play(builder: Builder, *sides: SideId) -> tuple[int, ...]:
    """The places of all players in play of these sides."""
    return in_play(builder, *builder.play.populations(*sides))


def _spot_name(spot: Spot) -> str:
    """How a spot is called in the names of places, which exports and JSON show."""
    where = spot.of.key if isinstance(spot.of, AreaId) else spot.of.value
    where = where if spot.role is None else f"{where} {spot.role.key}"
    return where if spot.part is Part.AT else f"{spot.part.value} {where}"


def ball_place(builder: Builder, kind: KindId, spot: Spot) -> int:
    """The place of balls of a kind that lie at a spot."""
    key = ("ball", kind, spot)
    if (found := builder.number(key)) is not None:
        return found
    side = owner_key(spot.owner)
    total = how_many(builder, kind)
    token = "load" if builder.play.kind(kind).sort is Sort.LOAD else "ball"
    name = f"{token}/{kind.key}/{_spot_name(spot)}/{side or '-'}"
    final = spot.of is Landmark.INSIDE or (kind, spot) in _brought(builder.play)
    return builder.add_place(key, Place(name, token, total, 0, side, kind.key, final, At(spot)))


def _brought(play: Play) -> Iterator[tuple[KindId, Spot]]:
    """What is brought somewhere for good, or counts there at the end, and where: there it may lie."""
    yield from ((each.role.kind, each.role.goal) for each in play.laden if isinstance(each.role, Laden))
    counted = (each.count for each in play.end_points)
    yield from ((kind, spot) for each in counted if isinstance(each, BallsAt) for kind in each.of for spot in each.at)
    for attempt in play.attempts:
        aim = attempt.aim
        if isinstance(aim, Along) and not aim.again and not aim.from_hand and attempt.ball is not None:
            yield attempt.ball, aim.goal


def balls_lying(builder: Builder, kind: KindId) -> tuple[int, ...]:
    """All places of balls of a kind that there are so far."""
    return tuple(n for key, n in builder.numbers.items() if key[0] == "ball" and key[1] == kind)


def store_place(builder: Builder, kind: KindId) -> int:
    """The place of balls of a kind that the teacher has: out of play."""
    place = Place(f"store/{kind.key}", "store", how_many(builder, kind), 0, kind=kind.key)
    return builder.add_place(("store", kind), place)


def clock_place(builder: Builder) -> int:
    """The count of the moments of the clock that have passed."""
    return builder.add_place((CLOCK,), Place(CLOCK, CLOCK, len(builder.times_s), 0))


def line_place(builder: Builder, line: int) -> int:
    """Whether a line that holds only the first time has taken effect."""
    return builder.add_place(("line", line), Place(f"line/{line}", "line", 1, 0))


def how_many(builder: Builder, kind: KindId, owner: Owner | None = None) -> int:
    """How many there are of a kind, or of one owner's: part by part where it has several parts."""
    parts = builder.play.kind(kind).parts
    total = 0
    for supply in builder.play.supplies:
        if supply.thing.kind != kind or owner not in (None, supply.thing.owner):
            continue
        side = supply.thing.owner
        times = 1
        if supply.per is Per.PLAYER:
            times = builder.players[side] if isinstance(side, SideId) else sum(builder.players.values())
        total += supply.count * parts * times
    return total


def target_place(builder: Builder, thing: Thing, standing: Posture | At) -> int:
    """The place of things of a kind and owner that stand, are down, or were brought somewhere."""
    key = ("target", thing, standing)
    if (found := builder.number(key)) is not None:
        return found
    kind, owner = builder.play.kind(thing.kind), owner_key(thing.owner)
    changing = builder.owners_change and kind.sort is Sort.TARGET
    total = how_many(builder, thing.kind) if changing else how_many(builder, thing.kind, thing.owner)
    name = f"target/{thing.kind.key}/{owner or '-'}/"
    if isinstance(standing, At):
        name += f"{_spot_name(standing.spot)}/{owner_key(standing.spot.owner) or '-'}"
    else:
        name += POSTURES[standing]
    place = Place(
        name,
        "target",
        total,
        0,
        owner,
        thing.kind.key,
        final=standing is not Posture.UP,
        standing=standing,
        in_parts=kind.parts > 1,
    )
    return builder.add_place(key, place)


def step_place(builder: Builder, kind: KindId, step: int) -> int:
    """The place of things of a kind on a step of their track."""
    key = ("step", kind, step)
    if (found := builder.number(key)) is not None:
        return found
    track = builder.play.track_of(kind)
    assert track is not None
    total = how_many(builder, kind)
    standing, name = OnStep(track.id, step), f"step/{kind.key}/{step}"
    place = Place(name, "body", total, 0, None, kind.key, final=True, standing=standing)
    return builder.add_place(key, place)


def points_place(builder: Builder, side: SideId, counted_to: int = 0) -> int:
    """The points of a side."""
    if (found := builder.number(("points", side))) is not None:
        return found
    begin, most = points_at_first(builder, side), counted_to
    if begin:
        rises = any(isinstance(each, Add) and each.points > 0 for rule in builder.play.rules for each in rule.effects)
        most = counted_to if counted_to > begin else begin + (counted_to or POINTS_COUNTED_TO) * rises
    return builder.add_place(("points", side), Place(f"points/{side.key}", "points", most, begin, side.key))


def points_at_first(builder: Builder, side: SideId) -> int:
    """How many points a side has at the start, those of all its players together where each has some."""
    times = {Per.PLAYER: builder.players[side], Per.OWNER: 1}
    return sum(each.number * times[each.per] for each in builder.play.begin_points if each.side == side)
