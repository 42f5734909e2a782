"""Where a rule sends balls, and where what was carried comes to lie, in words."""

from __future__ import annotations

from compose.telling.voice import Voice
from grammar.core.loads import Lies, SetDown
from grammar.core.play import Along, PickUp, ToMate
from grammar.core.rules import Happening, SendBall, SendBalls
from grammar.core.values import SHARED, Landmark, SideId, Spot

CAUGHT = "{ball} sent by {who} is caught by {side}"


def sent_told(voice: Voice, effect: SendBall | SendBalls, goal: str, touched: bool, actor: SideId | None) -> str:
    """Where the ball goes, or all of a kind, or one that they have; whoever touches who has it may have it then."""
    if isinstance(effect, SendBall):
        if touched and actor is not None and effect.to == Spot(Landmark.HANDS, actor):
            return voice.say("whoever did so has the ball")
        if effect.to.of is Landmark.INSIDE:
            return voice.say("the ball stays there")
        return voice.say("the ball goes {goal}", goal=goal)
    balls = voice.balls(effect.balls, True, None)
    if effect.all:
        return voice.say("all {balls} go {goal}", balls=balls, goal=goal)
    if voice.the_only_ball(effect.balls):
        return voice.say("the ball goes {goal}", goal=goal)
    one = "one of the {balls} that they have goes {goal}" if effect.of else "one of the {balls} goes {goal}"
    return voice.say(one, balls=balls, goal=goal)


def set_down_told(voice: Voice, plain: Voice, effect: SetDown) -> str:
    """What was carried lies somewhere; `plain` is the voice in which nobody has been spoken of as "their"."""
    kinds = [voice.nouns.kind(kind) for kind in sorted(effect.what)]
    what = voice.wording.listed((voice.nouns.with_article("the", noun, False) for noun in kinds), "or")
    if effect.to is Lies.BACK:
        return voice.say("{what} goes back to where it was taken from", what=what)
    if effect.to is Lies.THERE:
        return voice.say("{what} falls and lies where they are", what=what)
    return voice.say("{what} goes {goal}", what=what, goal=plain.goal([effect.to]))


def to_whom(voice: Voice, trigger: Happening, who: str) -> str:
    """Who sent a ball that came to nothing, and of several others to which side."""
    if len(trigger.against) != 1 or len(voice.play.sides) < 3 or SHARED in trigger.against:
        return who
    return voice.say("{who} to {side}", who=who, side=voice.sides(trigger.against))


def caught_of_whom(voice: Voice, trigger: Happening) -> str:
    """How it is said that the others catch a ball, where some of these are sent at something and others passed."""
    aims = {
        isinstance(each.aim, ToMate)
        for offer, each in voice.play.tries
        if offer.by in trigger.by and each.ball in trigger.balls and each.skill in trigger.skills
        if not isinstance(each.aim, Along | PickUp)
    }
    return "{ball} sent or passed by {who} is caught by {side}" if len(aims) > 1 else CAUGHT
