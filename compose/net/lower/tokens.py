"""Players, balls, things and points as places of the net: one place for each standing of each kind of token."""

from __future__ import annotations

from compose.net.lower.builder import Builder
from compose.net.lower.say_places import lying, of_side, player_noun, plural_of, standing_words
from compose.net.net import Place
from compose.net.side_words import is_plural
from grammar.core.declared import AreaKind, Per
from grammar.core.schedule import moments_s
from grammar.core.values import (
    PLAIN,
    At,
    KindId,
    Laden,
    OnStep,
    Owner,
    Population,
    Posture,
    Presence,
    SideId,
    Sort,
    Spot,
    Thing,
    without_load,
)
from grammar.words import article, count, plural

PRESENCES = {Presence.PLAYING: "in", Presence.OUT: "out"}
CLOCK = "clock"
POSTURES = {Posture.UP: "standing", Posture.DOWN: "down"}


def owner_key(owner: Owner) -> str | None:
    """The name of a side, None for nobody."""
    return owner.key if isinstance(owner, SideId) else None


def player_place(builder: Builder, who: Population, standing: Presence | At, lives: int | None = None) -> int:
    """The place of players of a population who are in play, out, or at a spot.

    In play they have so many `lives` left, where lives are counted: all of them if nothing is said.
    """
    if standing is Presence.PLAYING and lives is None:
        lives = builder.play.lives_of(who)
    key = ("player", who, standing, lives)
    if (found := builder.number(key)) is not None:
        return found
    noun, where = player_noun(who), standing_words(standing, who.side)
    task = without_load(who.role)
    role = None if task is PLAIN else task.key
    load = who.role if isinstance(who.role, Laden) else None
    name = f"player/{who.side.key}/{role or '-'}/{_standing_name(standing, who.side)}"
    if load is not None:
        name += f" with {load.kind.key} from {_spot_name(load.start)} of {owner_key(load.start.owner) or '-'}"
    if lives is not None:
        name, where = f"{name}/{lives}", f"{where} with {count(lives, 'life', 'lives')}"
    total = sum(builder.players.values()) if builder.sides_change else builder.players[who.side]
    area = _area_of(builder, standing)
    many = plural(noun) if role or not is_plural(who.side.key) else who.side.key
    if load is not None:
        many = f"{plural(player_noun(Population(who.side, task)))} with {article(load.kind.key)}"
    place = Place(
        name,
        "player",
        total,
        0,
        noun if load is not None else f"{noun} {where}",
        many if load is not None else f"{many} {where}",
        who.side.key,
        role,
        final=area is not AreaKind.QUEUE,
        standing=standing,
        area=area,
        lives=lives,
        load=load,
    )
    return builder.add_place(key, place)


def _standing_name(standing: Presence | At, side: SideId) -> str:
    if isinstance(standing, At):
        spot = standing.spot
        foreign = isinstance(spot.owner, SideId) and spot.owner != side
        return f"{_spot_name(spot)} of {owner_key(spot.owner)}" if foreign else _spot_name(spot)
    return PRESENCES[standing]


def _area_of(builder: Builder, standing: Presence | At) -> AreaKind | None:
    area = builder.play.area(standing.spot) if isinstance(standing, At) else None
    return area.kind if area is not None else None


def in_play(builder: Builder, *who: Population) -> tuple[int, ...]:
    """The places of these populations in play: one for each number of lives, where lives are counted."""
    return tuple(place for each in who for place in places_at(builder, each, Presence.PLAYING))


def places_at(builder: Builder, who: Population, standing: Presence | At) -> tuple[int, ...]:
    """The places of a population that stands so."""
    most = builder.play.lives_of(who) if standing is Presence.PLAYING else None
    if most is None:
        return (player_place(builder, who, standing),)
    return tuple(player_place(builder, who, standing, lives) for lives in range(most, 0, -1))


def side_in_play(builder: Builder, *sides: SideId) -> tuple[int, ...]:
    """The places of all players in play of these sides."""
    return in_play(builder, *builder.play.populations(*sides))


def _spot_name(spot: Spot) -> str:
    """How a spot is called in the names of places, which exports and JSON show."""
    return lying(spot, bare=True)


def ball_place(builder: Builder, kind: KindId, spot: Spot) -> int:
    """The place of balls of a kind that lie at a spot."""
    key = ("ball", kind, spot)
    if (found := builder.number(key)) is not None:
        return found
    where, side = lying(spot), owner_key(spot.owner)
    total = how_many(builder, kind)
    token = "load" if builder.play.kind(kind).sort is Sort.LOAD else "ball"
    name = f"{token}/{kind.key}/{_spot_name(spot)}/{side or '-'}"
    loads = (each.role for each in builder.play.laden if isinstance(each.role, Laden))
    brought = any((load.kind, load.goal) == (kind, spot) for load in loads)
    one, many = f"{kind.key} {where}", f"{plural_of(builder.core, kind)} {where}"
    return builder.add_place(key, Place(name, token, total, 0, one, many, side, kind.key, brought, At(spot)))


def balls_lying(builder: Builder, kind: KindId) -> tuple[int, ...]:
    """All places of balls of a kind that there are so far."""
    return tuple(n for key, n in builder.numbers.items() if key[0] == "ball" and key[1] == kind)


def store_place(builder: Builder, kind: KindId) -> int:
    """The place of balls of a kind that the teacher has: out of play."""
    name, many = kind.key, plural_of(builder.core, kind)
    total = how_many(builder, kind)
    place = Place(
        f"store/{kind.key}", "store", total, 0, f"{name} with the teacher", f"{many} with the teacher", kind=name
    )
    return builder.add_place(("store", kind), place)


def clock_place(builder: Builder) -> int:
    """The count of the moments of the clock that have passed."""
    said = "moment of the clock has passed", "moments of the clock have passed"
    return builder.add_place(("clock",), Place("clock", CLOCK, len(moments_s(builder.play)), 0, *said))


def line_place(builder: Builder, line: int) -> int:
    """Whether a line that holds only the first time has taken effect."""
    said = "line that holds the first time only has done so"
    return builder.add_place(("line", line), Place(f"line/{line}", "line", 1, 0, said, said))


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
    names = (thing.kind.key, plural_of(builder.core, thing.kind))
    if kind.parts > 1:
        names = (f"{thing.kind.key} part", f"{thing.kind.key} parts")
    where = lying(standing.spot) if isinstance(standing, At) else POSTURES[standing]
    one, many = (f"{of_side(name, thing.owner)} {where}" for name in names)
    changing = builder.owners_change and kind.sort is Sort.TARGET
    total = how_many(builder, thing.kind) if changing else how_many(builder, thing.kind, thing.owner)
    name = f"target/{thing.kind.key}/{owner or '-'}/{where}"
    final = standing is not Posture.UP
    place = Place(name, "target", total, 0, one, many, owner, thing.kind.key, final=final, standing=standing)
    return builder.add_place(key, place)


def step_place(builder: Builder, kind: KindId, step: int) -> int:
    """The place of things of a kind on a step of their track."""
    key = ("step", kind, step)
    if (found := builder.number(key)) is not None:
        return found
    track = builder.play.track_of(kind)
    assert track is not None
    where = f"on step {step} of the {track.id.key}"
    one, many = f"{kind.key} {where}", f"{plural_of(builder.core, kind)} {where}"
    total = how_many(builder, kind)
    standing, name = OnStep(track.id, step), f"step/{kind.key}/{step}"
    place = Place(name, "body", total, 0, one, many, None, kind.key, final=True, standing=standing)
    return builder.add_place(key, place)


def points_place(builder: Builder, side: SideId, counted_to: int = 0) -> int:
    """The points of a side."""
    one, many = of_side("point", side), of_side("points", side)
    return builder.add_place(
        ("points", side), Place(f"points/{side.key}", "points", counted_to, 0, one, many, side.key)
    )
