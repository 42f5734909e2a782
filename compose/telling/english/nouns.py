"""What a place of the net counts: "south lantern standing", "south lanterns standing"."""

from __future__ import annotations

from functools import singledispatch

from compose.net.net import Net, Place
from compose.telling.english.places import in_a_row, lying, of_side, players, plural_of, standing_words
from grammar.core.values import (
    PLAIN,
    SHARED,
    At,
    KindId,
    OnStep,
    Owner,
    Population,
    Posture,
    Presence,
    RoleId,
    SideId,
    Spot,
)
from grammar.words import article, called_by_players, count, plural

_FIXED = {
    "clock": ("moment of the clock has passed", "moments of the clock have passed"),
    "line": ("rule for the first time only is over", "rules for the first time only are over"),
    "result": ("result", "results"),
}


FROZEN = "frozen"
Pieces = tuple[str, str, str]


@singledispatch
def pieces(place: Place, net: Net, named: bool = True) -> Pieces:
    """The noun for one of what a place counts, for several, and how they are there.

    Where the side of the place is not `named`, for it was before, there is no noun for players that are called so.
    """
    side = SideId(place.side) if named and place.side else SHARED
    if place.token in _FIXED:
        return *_FIXED[place.token], ""
    if place.token == "points":
        return of_side("point", side), of_side("points", side), ""
    if place.token == "runs":
        return of_side("run", side), of_side("runs", side), ""
    if place.token == "row":
        return *in_a_row(place.skills, side), ""
    return _players(place, named) if place.token == "player" else _things(place, net, side)


def nouns(place: Place, net: Net) -> tuple[str, str]:
    """One of what the place counts, and several: they finish the phrase "3 ..."."""
    one, several, there = pieces(place, net)
    if isinstance(place.standing, At) and place.standing.spot.is_frozen:
        return f"frozen {one}{there.removeprefix(FROZEN)}", f"frozen {several}{there.removeprefix(FROZEN)}"
    return f"{one} {there}".rstrip(), f"{several} {there}".rstrip()


def many(net: Net, place: Place) -> str:
    """Several of what the place counts."""
    return nouns(place, net)[1]


def counted(net: Net, place: Place, number: int) -> str:
    """What the place counts, in the number of which there are so many."""
    return nouns(place, net)[0 if number == 1 else 1]


def where(place: Place) -> str:
    """Where players are: "in the heron queue", "on the rest bench", "out for the round"."""
    assert isinstance(place.standing, Presence | At)
    return standing_words(place.standing, SideId(place.side or ""))


def _players(place: Place, named: bool) -> Pieces:
    side, role = SideId(str(place.side)), RoleId(place.kind) if place.kind else PLAIN
    there = where(place) if place.load is None else f"with {article(place.load.kind.key)}"
    if place.lives is not None:
        there += f" with {count(place.lives, 'life', 'lives')}"
    if named:
        return *players(Population(side, role)), there
    if role is not PLAIN:
        return role.key, plural(role.key), there
    return ("", "", there) if called_by_players(side.key) else ("player", "players", there)


def _things(place: Place, net: Net, side: Owner) -> Pieces:
    kind = KindId(str(place.kind))
    one, several = kind.key, plural_of(net, kind)
    if place.token == "store":
        return one, several, "with the teacher"
    if place.token == "load" and place.standing is None:
        return f"{one} on its way", f"{several} on their way", ""
    if place.in_parts:
        one, several = f"{one} part", f"{one} parts"
    if place.token == "target":
        one, several = of_side(one, side), of_side(several, side)
    return one, several, _standing(place, side)


def _standing(place: Place, side: Owner) -> str:
    match place.standing:
        case At(spot):
            own = side is SHARED and spot.owner == SideId(str(place.side))
            return lying(Spot(spot.of, SHARED, spot.part) if own else spot)
        case OnStep(track, step):
            return f"on step {step} of the {track.key}"
        case Posture.UP:
            return "standing"
        case Posture.DOWN:
            return "down"
    raise TypeError(place.name)
