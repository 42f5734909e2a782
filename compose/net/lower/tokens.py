"""Players, balls and targets as places: which standings a kind of token has, and how they are said."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, Key
from compose.net.net import Place
from grammar.game import GameKit, GameTrack
from grammar.meanings import KitMeaning, Meaning
from grammar.sentences import when
from grammar.sentences.base import Np
from grammar.sentences.sides import PlacingOnStep
from grammar.words import plural

POINTS_COUNTED_TO = 25
ON = ("bench", "base", "mark")  # what one stands on, not in
OUT = "out"
IN = "in"


def roles_of(builder: Builder, side: str) -> tuple[str | None, ...]:
    """The roles of a side; None stands for the players without one."""
    roles = tuple(role.name for role in builder.game.roles if role.side in (None, side))
    return (None, *roles)


def player_place(builder: Builder, side: str, role: str | None, standing: str) -> int:
    """The place of a side's players with a role, in play, out, or in a named area."""
    noun = f"{side} {role}" if role else player_noun(side)
    where = {IN: "in", OUT: "out for the round"}.get(standing, f"{_preposition(standing)} the {standing}")
    total = sum(builder.players.values()) if _players_change_sides(builder) else builder.players[side]
    many = noun if noun == side else plural(noun)
    place = Place(
        f"player/{side}/{role or '-'}/{standing}",
        "player",
        total,
        0,
        f"{noun} {where}",
        f"{many} {where}",
        side,
        role,
        final=standing == OUT or not standing.endswith("queue"),
    )
    return builder.add_place(("player", side, role, standing), place)


def _players_change_sides(builder: Builder) -> bool:
    """Whether any rule lets a player join another side: then one side may come to have everybody."""
    return any(
        isinstance(each, when.Joins) and not isinstance(each.what, Np)
        for rule in builder.game.whens
        for each in rule.consequences
    )


def targets_change_owners(builder: Builder) -> bool:
    """Whether any rule lets a target join another side."""
    return any(isinstance(each, when.TakenOver) for rule in builder.game.whens for each in rule.consequences)


def player_noun(side: str) -> str:
    """Such as "north player", but "carrier" where the side is called carriers."""
    return singular_side(side) if is_plural(side) else f"{side} player"


def is_plural(side: str) -> bool:
    """Whether a side is called by its players: "herons", "boatmen"; "north" is not."""
    return side.endswith("men") or (side.endswith("s") and not side.endswith("ss") and len(side) > 3)


def singular_side(side: str) -> str:
    """Such as "heron", "boatman"."""
    if side.endswith("men"):
        return side[:-3] + "man"
    return side[:-3] + "y" if side.endswith("ies") else side[:-1]


def does(side: str, one: str, many: str) -> str:
    """A side with its verb: "north wins", "the herons win"."""
    return f"the {side} {many}" if is_plural(side) else f"{side} {one}"


def of_side(thing: str, side: str | None) -> str:
    """A thing with its owner: "south lantern", "stone of the pikes"."""
    if side is None:
        return thing
    return f"{thing} of the {side}" if is_plural(side) else f"{side} {thing}"


def _preposition(area: str) -> str:
    return "on" if area.rsplit(maxsplit=1)[-1] in ON else "in"


def lying(spot: str) -> str:
    """Where a ball lies, in words: "in the dim strip", "behind the back line"."""
    return spot if spot.startswith(("behind", "on ", "beside", "before", "at ")) else f"{_preposition(spot)} the {spot}"


def in_play(builder: Builder, side: str, role: str | None = "any") -> tuple[int, ...]:
    """The places of a side's players in play, of one role or of any."""
    roles = roles_of(builder, side) if role == "any" else (role,)
    return tuple(
        builder.index(("player", side, each, IN)) for each in roles if ("player", side, each, IN) in builder.places
    )


def ball_place(builder: Builder, kind: str, where: Key) -> int:
    """The place of balls of a kind: ("half", side), (area, side), or ("behind the back line", side)."""
    line = builder.game.kit_named(kind)
    spot, side = where[0], where[1]
    if spot == "half":
        said = f"in the half of the {side}" if is_plural(str(side)) else f"in the {side} half"
    elif spot == "court":
        said = "on the court"
    else:
        said = lying(str(spot)) + (f" of {side}" if side else "")
    total = ball_total(builder, line)
    place = Place(
        f"ball/{kind}/{spot}/{side or '-'}",
        "ball",
        total,
        0,
        f"{line.name} {said}",
        f"{line.plural} {said}",
        side,
        kind,
    )
    return builder.add_place(("ball", kind, spot, side), place)


def ball_total(builder: Builder, line: GameKit) -> int:
    """How many of a kind there are in all."""
    return line.total(builder.players)


def target_place(builder: Builder, kind: str, owner: str | None, standing: str) -> int:
    """The place of targets of a kind and owner, "standing" or "down"."""
    line = builder.game.kit_named(kind)
    names = (f"{line.name} part", f"{line.name} parts") if line.parts > 1 else (line.name, line.plural)
    one, many = (f"{of_side(name, owner)} {standing}" for name in names)
    shared = line.owner == "each" and targets_change_owners(builder)
    place = Place(
        f"target/{kind}/{owner or '-'}/{standing}",
        "target",
        line.total(builder.players) if shared else target_total(builder, line, owner),
        0,
        one,
        many,
        owner,
        kind,
        final=standing == "down",
    )
    return builder.add_place(("target", kind, owner, standing), place)


def first_owners(builder: Builder, line: GameKit) -> tuple[str | None, ...]:
    """Who owns things of a kit line at the start: every side, one side, or nobody."""
    if line.owner == "each":
        return builder.side_names
    return (line.owner,) if line.owner in builder.side_names else (None,)


def owners(builder: Builder, line: GameKit) -> tuple[str | None, ...]:
    """Who may come to own things of a kit line: who does at the start, and whoever may take them over."""
    first = first_owners(builder, line)
    if line.category != "target" or not targets_change_owners(builder):
        return first
    return (*first, *(side for side in builder.side_names if side not in first))


def target_total(builder: Builder, line: GameKit, owner: str | None) -> int:
    """How many targets of a kit line an owner has at the start; a thing of several parts counts part by part."""
    return line.total(builder.players, owner)


def track_of(builder: Builder, kind: str) -> GameTrack:
    """The track on which the set-up puts things of a kind."""
    line = builder.game.kit_named(kind)
    for placing in builder.game.all_of("set-up", PlacingOnStep):
        track = builder.game.track_named(placing.track.name.text)
        if placing.what.name.text in (line.name, line.plural) and track is not None:
            return track
    raise LookupError(f"{kind} stands on no track")


def step_place(builder: Builder, kind: str, step: int, track: str) -> int:
    """The place of targets or bodies of a kind on a step of a track."""
    line = builder.game.kit_named(kind)
    where = f"on step {step} of the {track}"
    total = ball_total(builder, line)
    place = Place(
        f"step/{kind}/{step}",
        "body",
        total,
        0,
        f"{line.name} {where}",
        f"{line.plural} {where}",
        None,
        kind,
        final=True,
    )
    return builder.add_place(("step", kind, str(step)), place)


def points_place(builder: Builder, side: str, counted_to: int) -> int:
    """The points of a side."""
    one, many = of_side("point", side), of_side("points", side)
    place = Place(f"points/{side}", "points", counted_to, 0, one, many, side)
    return builder.add_place(("points", side), place)


def kit_meant(builder: Builder, meaning: Meaning, category: str) -> Iterator[GameKit]:
    """The kit lines that a name stands for: one of whatever category, or all of this category."""
    for line in builder.game.kit_of(meaning):
        if isinstance(meaning, KitMeaning) or line.category == category:
            yield line
