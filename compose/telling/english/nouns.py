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
    Population,
    Posture,
    Presence,
    RoleId,
    SideId,
)
from grammar.words import count

_FIXED = {
    "clock": ("moment of the clock has passed", "moments of the clock have passed"),
    "line": ("line that holds the first time only has done so", "line that holds the first time only has done so"),
    "result": ("result", "results"),
}


@singledispatch
def nouns(place: Place, net: Net) -> tuple[str, str]:
    """One of what the place counts, and several: they finish the phrase "3 ..."."""
    if place.token in _FIXED:
        return _FIXED[place.token]
    if place.token == "points":
        return of_side("point", _owner(place)), of_side("points", _owner(place))
    if place.token == "row":
        return in_a_row(place.skills, str(place.side))
    return _players(place) if place.token == "player" else _things(place, net)


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


def _owner(place: Place) -> SideId:
    return SideId(str(place.side))


def _players(place: Place) -> tuple[str, str]:
    side, role = _owner(place), RoleId(place.kind) if place.kind else PLAIN
    if place.load is not None:
        return players(Population(side, place.load))
    one, several = players(Population(side, role))
    there = where(place)
    if place.lives is not None:
        there += f" with {count(place.lives, 'life', 'lives')}"
    return f"{one} {there}", f"{several} {there}"


def _things(place: Place, net: Net) -> tuple[str, str]:
    kind = KindId(str(place.kind))
    one, several = kind.key, plural_of(net, kind)
    if place.token == "store":
        return f"{one} with the teacher", f"{several} with the teacher"
    if place.token == "load" and place.standing is None:
        return f"{one} on its way", f"{several} on their way"
    if place.in_parts:
        one, several = f"{one} part", f"{one} parts"
    if place.token == "target":
        owner = SHARED if place.side is None else _owner(place)
        one, several = of_side(one, owner), of_side(several, owner)
    there = _standing(place)
    return f"{one} {there}", f"{several} {there}"


def _standing(place: Place) -> str:
    match place.standing:
        case At(spot):
            return lying(spot)
        case OnStep(track, step):
            return f"on step {step} of the {track.key}"
        case Posture.UP:
            return "standing"
        case Posture.DOWN:
            return "down"
    raise TypeError(place.name)
