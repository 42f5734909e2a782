"""Players, things and spots: "north player", "south lantern", "in the dim strip of south"."""

from __future__ import annotations

from compose.net.net import Net
from compose.telling.sides import does, subject
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
from grammar.words import article, called_by_players, player_of, plural

ON = ("bench", "base", "mark")  # what one stands on, not in


def player_noun(who: Population) -> str:
    """Such as "north player", "north keeper"; "carrier" and "guard of the carriers" where the side is called so."""
    return players(who)[0]


def players(who: Population) -> tuple[str, str]:
    """One of these players, and several."""
    side = who.side.key
    if isinstance(who.role, Laden):
        load = article(who.role.kind.key)
        one, many = players(Population(who.side, who.role.role))
        return f"{one} with {load}", f"{many} with {load}"
    if who.role is not PLAIN:
        return of_side(who.role.key, who.side), of_side(plural(who.role.key), who.side)
    if called_by_players(side):
        return player_of(side), side
    return f"{side} player", f"{side} players"


def of_side(thing: str, owner: Owner) -> str:
    """A thing with its owner: "south lantern", "stone of the pikes"."""
    if not isinstance(owner, SideId):
        return thing
    return f"{thing} of the {owner.key}" if called_by_players(owner.key) else f"{owner.key} {thing}"


def plural_of(net: Net, kind: KindId) -> str:
    """The plural of a kind's name."""
    return dict(net.plurals)[kind]


def _in_or_on(area: AreaId) -> str:
    return "on" if area.key.rsplit(maxsplit=1)[-1] in ON else "in"


def lying(spot: Spot, bare: bool = False, the: str = "the") -> str:
    """Where something lies: "in the dim strip of south", "behind the back line of south", "in the south half".

    Instead of `the` and its owner an area may have another word before it: "in their dim strip".
    """
    if spot.role is not None:
        return f"with the {of_side(spot.role.key, spot.owner)}"
    whose = f" of {subject(spot.owner.key)}" if isinstance(spot.owner, SideId) and not bare and the == "the" else ""
    if isinstance(spot.of, AreaId):
        area = spot.of.key
        if spot.part is Part.AT:
            return area if bare else f"{_in_or_on(spot.of)} {the} {area}{whose}"
        return f"{spot.part.value} {the} {area}{whose}"
    if spot.of is Landmark.HALF and spot.part is Part.AT:
        return "half" if bare else f"in the {of_side('half', spot.owner)}"
    if spot.part is Part.AT and spot.of in (Landmark.COURT, Landmark.MIDDLE):
        return spot.of.value if bare else {"court": "on the court"}.get(spot.of.value, "in the middle")
    if spot.of is Landmark.INSIDE:
        owner = spot.owner.key if isinstance(spot.owner, SideId) and not bare else None
        return "inside" if owner is None else f"inside what {does(owner, 'has', 'have')}"
    if spot.is_frozen:
        return "frozen"
    if spot.of is Landmark.HANDS:
        return spot.of.value if bare else f"in the hands{whose}"
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
        else lying(Spot(standing.spot.of, side, standing.spot.part)).removesuffix(f" of {subject(side.key)}")
    )


def in_a_row(skills: frozenset[Skill], side: Owner) -> tuple[str, str]:
    """One success in a row, and several: "north pass in a row"."""
    one = next(iter(skills)).value if len(skills) == 1 else "success"
    first, second = (of_side(noun, side) for noun in (one, plural(one)))
    return f"{first} in a row", f"{second} in a row"
