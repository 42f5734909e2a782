"""Players who are in an area of the sheet and wait there for good: nobody acts from there, nothing takes them away.

That a player who is put, or sent, into an area waits there is the language's; who writes "all runners in the start
strip" beside "runners run from the start strip" means where they begin to play.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.check.found import BackAfter, Value
from compose.check.pointing import missing_places
from compose.check.study import Study
from compose.net.net import Move, Place, Rule
from grammar.core.values import AreaId, At, Presence
from grammar.frozen import frozen
from grammar.said import said


@frozen
class Waiting:
    """Players who wait for good: the line that puts them there at the set-up, or sends them there; what mends it."""

    line: Rule
    at_the_set_up: bool
    mend: Value


def waiting_for_good(study: Study, state: int) -> list[Waiting]:
    """Who waits so in a state in which players of their side are missing for play; at the set-up first."""
    missing = {each.side for each in map(study.net.places.__getitem__, missing_places(study, state)) if _plays(each)}
    moves = [effect for effect in study.net.effects if isinstance(effect, Move)]
    used = {place for each in study.net.transitions for limit in each.rate.limits for place in limit}
    used |= {move.source for move in moves}
    there = [
        number
        for number, place in enumerate(study.net.places)
        if _waits(place) and place.side in missing and study.table[state, number] and number not in used
    ]
    found = [each for number in there for each in _of(study, number, moves)]
    return sorted(found, key=lambda each: not each.at_the_set_up)


def _plays(place: Place) -> bool:
    return place.token == "player" and place.standing is Presence.PLAYING


def _waits(place: Place) -> bool:
    return place.token == "player" and isinstance(place.standing, At) and isinstance(place.standing.spot.of, AreaId)


def _of(study: Study, number: int, moves: list[Move]) -> Iterator[Waiting]:
    players = study.net.places[number]
    for place, line in study.net.placed:
        if place == number:
            pattern = "The {players} wait there, for good: leave out {line}; whoever plays needs no place."
            yield Waiting(line, True, said(pattern, players=players, line=line))
            return
    sent = next((move.rule for move in moves if move.target == number), None)
    if sent is not None:
        pattern = 'The {players} wait there, for good. Say who brings them back or when, such as "{line}".'
        yield Waiting(sent, False, said(pattern, players=players, line=BackAfter(players)))
