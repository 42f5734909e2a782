"""The points that somebody wins or loses, in words."""

from __future__ import annotations

from collections.abc import Sequence

from compose.telling.moment import OF_THE_DOER, Moment, named, of_the_doer
from grammar.core.rules import Add, Happening, Result
from grammar.core.values import SideId

OWNED = {(True, True): "its owner scores {points}", (True, False): "its owner loses {points}"}
OWNED |= {(False, True): "whoever did so scores {points}", (False, False): "whoever did so loses {points}"}
OF_A_PLAYER = {
    result: {True: f"the player {done} scores {{points}}", False: f"the player {done} loses {{points}}"}
    for result, done in ((Result.HIT, "hit"), (Result.HIGH, "hit"), (Result.TOUCHED, "touched"))
}


def points_told(moment: Moment, effect: Add, sides: Sequence[SideId]) -> str:
    """The points that one or several sides win or lose."""
    points, voice = moment.voice.wording.counted(abs(effect.points), "point", "points"), moment.voice
    points = voice.say("{points} more", points=points) if effect.more else points
    patterns = ("{side} scores {points}", "{side} score {points}")
    if effect.points < 0:
        patterns = ("{side} loses {points}, but never below 0", "{side} lose {points}, but never below 0")
    solo = any(each.solo and each.id == moment.actor for each in voice.play.sides)
    if solo or any(isinstance(each, Add) and each.owner for each in moment.rule.effects):
        trigger = moment.rule.trigger
        result = trigger.result if isinstance(trigger, Happening) else None
        patterns_of = OF_A_PLAYER.get(result, {}) if effect.owner and result is not None else {}
        return voice.say(patterns_of.get(effect.points > 0, OWNED[effect.owner, effect.points > 0]), points=points)
    if of_the_doer(moment, sides):
        return voice.say(patterns[0], side=voice.say(OF_THE_DOER), points=points)
    return named(moment).does(sides, *patterns, points=points)
