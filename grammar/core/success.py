"""What an attempt is made for."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.core.play import Aim, Along, AtPlayers, AtThing, Past, PickUp, Through, ToMate
from grammar.core.rules import Result
from grammar.core.values import Skill

SUCCESS: Mapping[type, Result] = {
    AtThing: Result.KNOCKED,
    AtPlayers: Result.HIT,
    Through: Result.THROUGH,
    Past: Result.CROSSED,
    ToMate: Result.PASSED,
    Along: Result.ARRIVED,
    PickUp: Result.TAKEN,
}


def success_of(skill: Skill, aim: Aim) -> Result:
    """The result for which somebody tries: whoever touches a player does not hit them."""
    return Result.TOUCHED if skill is Skill.TOUCH else SUCCESS[type(aim)]
