"""Where balls lie that players have at hand without fetching them: their own ground."""

from __future__ import annotations

from functools import cache

from grammar.core.declared import Cut, Doing
from grammar.core.game import Play
from grammar.core.rules import SendBall, SendBalls
from grammar.core.values import SHARED, AreaId, Landmark, Part, Population, SideId, Spot

COURT = Spot(Landmark.COURT, SHARED)


def own_part(play: Play, side: SideId) -> Spot:
    """Where a side has its balls: in its half; without halves in its hands, or anywhere where all share them."""
    if play.held:
        return Spot(Landmark.HANDS, side)
    return COURT if play.court.cut is Cut.WHOLE else Spot(Landmark.HALF, side)


def spots_at_hand(play: Play, who: Population) -> tuple[Spot, ...]:
    """Where balls lie that a population may use without fetching them: where it stays.

    Whoever stays in an area, or beside the court, has the balls of their own part of it, and those in the area. What a
    line gives to those with a task only they have.
    """
    found: dict[Spot, None] = {}
    for home in [home.at for home in play.homes if home.who == who] or [own_part(play, who.side)]:
        area = play.area(home)
        if home.of is Landmark.HALF and home.part is Part.AT:
            found[home] = None
        elif home.of is Landmark.COURT and not play.held:
            found |= dict.fromkeys(own_part(play, side) for side in play.side_ids)
        else:
            found[own_part(play, who.side)] = None
            if area is not None and Doing.ENTER not in area.shut:
                found[home] = None
    return *found, *(spot for spot in handed(play) if (spot.owner, spot.role) == (who.side, who.role))


@cache
def handed(play: Play) -> tuple[Spot, ...]:
    """Where those with a task have balls that a line gives to them alone."""
    sent = [rest.to for rest in play.rests]
    effects = (effect for rule in play.rules for effect in rule.effects)
    sent += [effect.to for effect in effects if isinstance(effect, SendBall | SendBalls)]
    return tuple(dict.fromkeys(spot for spot in sent if spot.role is not None))


def lies_in_what_is_shut(play: Play, spot: Spot) -> bool:
    """Whether a place lies in an area that nobody enters, without being that area."""
    return any(
        Doing.ENTER in area.shut
        and not isinstance(spot.of, AreaId)
        and (_ground(area.lies.of), area.lies.owner) == (_ground(spot.of), spot.owner)
        and (area.lies.part is spot.part or (area.lies.part is Part.ACROSS and spot.part is Part.AT))
        for area in play.areas
    )


def _ground(of: Landmark | AreaId) -> Landmark | AreaId:
    return Landmark.MIDDLE if of is Landmark.MIDDLE_LINE else of
