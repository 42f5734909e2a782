"""Things that players carry."""

from __future__ import annotations

from compose.net.net import Net, Place
from compose.net.outcome import Moment
from compose.net.told import Tried
from grammar.core.rules import Result
from grammar.core.skills import Skill
from grammar.core.values import Landmark

AT_HAND = (Landmark.HANDS, Landmark.HALF, Landmark.COURT)  # where whoever plays has a ball


def is_picked_up(moment: Moment) -> bool:
    """Whether somebody carries a ball off that lies somewhere: nobody holds it before."""
    return moment.skill is Skill.CARRY and moment.ball_at is not None and moment.ball_at.of not in AT_HAND


def on_the_way(place: Place) -> bool:
    """Whether a place counts things that players carry: whoever carries one is counted as well."""
    return place.token == "load" and place.standing is None


def taken_about(net: Net, things: Place) -> bool:
    """Whether things are what players take from place to place, even if they are like a ball."""
    moments = (each.told.moment for each in net.transitions if isinstance(each.told, Tried))
    taken = {moment.ball.key for moment in moments if moment.ball is not None and moment.result is Result.TAKEN}
    return things.token == "load" or (things.token == "ball" and things.kind in taken)
