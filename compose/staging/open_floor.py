"""The open floor of a chase: what is left of the court beside the places where nobody is touched."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.covered import left_free_m2
from compose.staging.floor.touching import is_safe_from, safe_share
from compose.staging.places import Court
from grammar.core.declared import Area, Doing
from grammar.core.game import Play
from grammar.core.play import AtPlayers
from grammar.core.values import Population, SideId, Skill, without_load

OPEN_FLOOR = "open floor for each player"


def safe_places(play: Play) -> tuple[Area, ...]:
    """The areas in which nobody can be touched by any of those who touch."""
    taggers = {by for by, _ in _chases(play)}
    return tuple(area for area in play.areas if taggers and all(is_safe_from(area, by, Doing.TOUCH) for by in taggers))


def open_floor_m2(play: Play, court: Court) -> float | None:
    """The open floor for each of those who are on it at a time; None where no place is safe. Whoever can be touched
    is in a safe place as often as the forecast takes them to be."""
    safe = {(area.id.key, area.owner.key if isinstance(area.owner, SideId) else None) for area in safe_places(play)}
    if not safe:
        return None
    floor = court.floor
    shut = (area.rectangle for area in floor.areas if (area.name, area.owner) in safe or Doing.ENTER in area.shut)
    left = left_free_m2([floor.court], [*shut, *court.fixed])
    there = 0.0
    for each in court.acting:
        there += each.count * (1.0 - _sheltered(play, each.population))
    return left / max(1.0, there)


def _sheltered(play: Play, who: Population) -> float:
    """How much of the time somebody is in a safe place: those whom nobody touches are in none."""
    by = {by for by, whom in _chases(play) if whom == who}
    return min((safe_share(play, who, each) for each in by), default=0.0)


def _chases(play: Play) -> Iterator[tuple[Population, Population]]:
    """Who touches whom."""
    for offer, attempt in play.tries:
        if attempt.skill is Skill.TOUCH and isinstance(attempt.aim, AtPlayers):
            yield from ((offer.by, Population(who.side, without_load(who.role))) for who in attempt.aim.of)
