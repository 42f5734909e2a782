"""Players, things and spots: "north player", "south lantern", "in the dim strip of south"."""

from __future__ import annotations

from compose.net.net import Net
from compose.telling.sides import is_plural
from grammar.core.values import (
    PLAIN,
    AreaId,
    At,
    KindId,
    Laden,
    Landmark,
    Owner,
    Part,
    Population,
    Presence,
    SideId,
    Skill,
    Spot,
)
from grammar.words import article, player_of, plural

ON = ("bench", "base", "mark")  # what one stands on, not in


def player_noun(who: Population) -> str:
    """Such as "north player", "north keeper"; "carrier" where the side is called carriers."""
    if isinstance(who.role, Laden):
        return f"{player_noun(Population(who.side, who.role.role))} with {article(who.role.kind.key)}"
    if who.role is not PLAIN:
        return f"{who.side.key} {who.role.key}"
    return player_of(who.side.key) if is_plural(who.side.key) else f"{who.side.key} player"


def of_side(thing: str, owner: Owner) -> str:
    """A thing with its owner: "south lantern", "stone of the pikes"."""
    if not isinstance(owner, SideId):
        return thing
    return f"{thing} of the {owner.key}" if is_plural(owner.key) else f"{owner.key} {thing}"


def plural_of(net: Net, kind: KindId) -> str:
    """The plural of a kind's name."""
    return dict(net.plurals)[kind]


def _in_or_on(area: AreaId) -> str:
    return "on" if area.key.rsplit(maxsplit=1)[-1] in ON else "in"


def lying(spot: Spot, bare: bool = False) -> str:
    """Where something lies: "in the dim strip of south", "behind the back line of south", "in the south half"."""
    whose = f" of {spot.owner.key}" if isinstance(spot.owner, SideId) and not bare else ""
    if isinstance(spot.of, AreaId):
        area = spot.of.key
        if spot.part is Part.AT:
            return area if bare else f"{_in_or_on(spot.of)} the {area}{whose}"
        return f"{spot.part.value} the {area}{whose}"
    if spot.of is Landmark.HALF and spot.part is Part.AT:
        if bare or not isinstance(spot.owner, SideId):
            return "half"
        return f"in the half of the {spot.owner.key}" if is_plural(spot.owner.key) else f"in the {spot.owner.key} half"
    if spot.part is Part.AT and spot.of in (Landmark.COURT, Landmark.MIDDLE):
        return spot.of.value if bare else {"court": "on the court"}.get(spot.of.value, "in the middle")
    if spot.of is Landmark.HANDS and isinstance(spot.owner, SideId):
        return spot.of.value if bare else f"in the hands of {spot.owner.key}"
    at = "in" if spot.of is Landmark.CORNER else "on"
    return f"{at if spot.part is Part.AT else spot.part.value} the {spot.of.value}{whose}"


def standing_words(standing: Presence | At, side: SideId) -> str:
    """Where players are: "in", "out for the round", "in the heron queue"."""
    if isinstance(standing, Presence):
        return {Presence.PLAYING: "in", Presence.OUT: "out for the round"}[standing]
    foreign = isinstance(standing.spot.owner, SideId) and standing.spot.owner != side
    return (
        lying(standing.spot)
        if foreign
        else lying(Spot(standing.spot.of, side, standing.spot.part)).removesuffix(f" of {side.key}")
    )


def in_a_row(skills: frozenset[Skill], side: str) -> tuple[str, str]:
    """One success in a row, and several: "north pass in a row"."""
    one = next(iter(skills)).value if len(skills) == 1 else "success"
    first, second = (of_side(noun, SideId(side)) for noun in (one, plural(one)))
    return f"{first} in a row", f"{second} in a row"
