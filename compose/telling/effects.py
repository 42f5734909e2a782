"""What follows, in words: who goes where, what becomes of a thing and of a ball, who scores."""

from __future__ import annotations

from typing import assert_never

from compose.telling.balls_sent import sent_told, set_down_told
from compose.telling.moment import OF_THE_DOER, Moment, named, of_the_doer, plain
from compose.telling.nouns import PLAYER
from compose.telling.points import points_told
from compose.telling.services import waiting
from compose.telling.sets import STANDS, several_told
from compose.telling.side_voice import Subject
from grammar.core.area_kind import AreaKind
from grammar.core.clock import ComeIn, TakeAway, TakeEffect
from grammar.core.lives import LastLife
from grammar.core.loads import SetDown
from grammar.core.play import Turn, Waiting
from grammar.core.rules import (
    ON_A_PLAYER,
    Add,
    AllPlaying,
    Effect,
    Finish,
    Go,
    Happening,
    LifeOf,
    Nothing,
    Own,
    Person,
    PlayOn,
    Put,
    PutOnStep,
    Result,
    Rule,
    SendBall,
    SendBalls,
    Shift,
    StandAgain,
    StartAgain,
    Swap,
)
from grammar.core.rules import Subject as Mover
from grammar.core.values import PLAIN, At, Presence, RoleId, SideId, Spot
from grammar.frozen import evolve

LIVES = {-1: "{who} loses a life", 1: "{who} gets a life back"}
PLAYS_ON = dict.fromkeys(ON_A_PLAYER, "the player hit plays on") | {Result.TOUCHED: "the player touched plays on"}
PERSONS = {Person.OBJECT: "the player hit", Person.CATCHER: "the catcher", Person.MATE: "the team-mate"}
SENT = (Result.CAUGHT, Result.MISSED, Result.BLOCKED, Result.LEFT)
WHO_ACTED: dict[Result | None, str] = {Result.PASSED: "whoever passed", **dict.fromkeys(SENT, "whoever sent it")}


def effect_told(moment: Moment, effect: Effect) -> str:
    """One effect, without a capital and a full stop."""
    voice = moment.voice
    match effect:
        case Go():
            return _go(moment, effect)
        case LifeOf():
            return voice.say(LIVES[effect.by], who=_mover(moment, effect.who))
        case Swap():
            return _swapped(moment, effect)
        case Put():
            return voice.say(STANDS[effect.posture, effect.untouched], _feminine(moment), it=_it(moment))
        case Own():
            return voice.say("{it} joins {side}", it=_it(moment), side=_side(moment, effect.side))
        case Shift():
            return _shift(moment, effect)
        case PutOnStep():
            thing = voice.things([effect.thing], False, "a" if effect.source is None and not moment.things else "the")
            return voice.say("{thing} goes to {step}", thing=thing, step=voice.step(effect.to))
        case SendBall() | SendBalls():
            goal = _goal(moment, effect.to)
            return sent_told(voice, effect, goal, _touched(moment.rule), moment.actor)
        case ComeIn() | TakeAway() | StandAgain():
            return several_told(voice, effect)
        case Add():
            return points_told(moment, effect, [effect.side])
        case StartAgain():
            scoring = any(isinstance(each, Add) for rule in voice.play.rules for each in rule.effects)
            return voice.say("everything starts again, but points stay" if scoring else "everything starts again")
        case TakeEffect():
            return ""
        case Nothing():
            return voice.say("nothing else follows")
        case PlayOn():
            assert isinstance(moment.rule.trigger, Happening)
            return voice.say(PLAYS_ON.get(moment.rule.trigger.result, "play goes on"))
        case Finish():
            if of_the_doer(moment, [effect.winner]):
                return voice.say("{side} wins", side=voice.say(OF_THE_DOER))
            return named(moment).wins(effect.winner)
        case SetDown():
            return set_down_told(voice, plain(moment), effect)
    assert_never(effect)


def _swapped(moment: Moment, effect: Swap) -> str:
    """Who changes places with whom: a passer and a team-mate with different tasks exchange these, too."""
    pattern = "{who} changes places with {whom}"
    if effect.number is not None:
        who, whom, number = _mover(moment, effect.who), _mover(moment, effect.other), str(effect.number)
        return moment.voice.say("{number} of {who} change places with {whom}", number=number, who=who, whom=whom)
    if isinstance(effect.who, AllPlaying):
        pattern = "{who} go behind {whom}, and as many come in as played at the start"
    elif effect.other is Person.MATE and moment.actor and len(moment.voice.play.tasks_of(moment.actor)) > 1:
        pattern = "{who} and {whom} change places and tasks"
    return moment.voice.say(pattern, who=_mover(moment, effect.who), whom=_mover(moment, effect.other))


def _touched(rule: Rule) -> bool:
    return isinstance(rule.trigger, Happening) and rule.trigger.result is Result.TOUCHED


def _goal(moment: Moment, to: Spot) -> str:
    """Where a ball goes: of two players "their half" could be either's."""
    voice = plain(moment)
    if isinstance(to.owner, SideId) and of_the_doer(moment, [to.owner]):
        voice = evolve(voice, called=((to.owner, voice.say(OF_THE_DOER)),)).about(None, Subject.PLAYERS)
    return voice.goal([to])


def _side(moment: Moment, side: SideId) -> str:
    voice = named(moment)
    return voice.it() if side == voice.near else voice.sides([side])


def _it(moment: Moment) -> str:
    kinds = {thing.kind for thing in moment.things}
    nouns = moment.voice.nouns
    noun = nouns.kind(next(iter(kinds))) if len(kinds) == 1 else nouns.noun("target")
    return nouns.with_article("the", noun, False)


def _feminine(moment: Moment) -> bool:
    kinds = {thing.kind for thing in moment.things}
    return len(kinds) != 1 or moment.voice.nouns.kind(next(iter(kinds))).feminine


def _shift(moment: Moment, effect: Shift) -> str:
    """Positive steps lead away from the home of the first side of the track."""
    voice = plain(moment)
    tracks = [voice.play.track_of(thing.kind) for thing in moment.things]
    homes = next((track.homes for track in tracks if track is not None), voice.play.side_ids)
    steps = voice.wording.counted(abs(effect.steps), "step", "steps")
    home = voice.of(voice.nouns.noun("home"), False, [homes[1] if effect.steps > 0 else homes[0]])
    return voice.say("{it} moves {steps} towards {home}", it=_it(moment), steps=steps, home=home)


def mover_side(moment: Moment, who: Mover) -> SideId | None:
    """The side of who moves, where it is one."""
    match who:
        case Person.ACTOR | Person.MATE:
            return moment.actor
        case Person():
            return moment.concerned
        case Waiting() | AllPlaying():
            sides = {each.side for each in who.who}
            return next(iter(sides)) if len(sides) == 1 else None


def _mover(moment: Moment, who: Mover) -> str:
    voice = moment.voice
    match who:
        case Person.ACTOR:
            result = moment.rule.trigger.result if isinstance(moment.rule.trigger, Happening) else None
            return voice.say(WHO_ACTED.get(result, "whoever did so"))
        case Person.KEEPER:
            side = moment.concerned
            who_is = voice.play.populations(side) if side else voice.play.populations()
            return named(moment).calling("a").players(who_is, "a", False)
        case Person.OBJECT if isinstance(moment.rule.trigger, LastLife):
            return voice.say("that player")
        case Person():
            return voice.say("the player touched" if who is Person.OBJECT and _touched(moment.rule) else PERSONS[who])
        case Waiting():
            speaking = voice if voice.me is not None else voice.about(None, Subject.PLAYERS)
            return waiting(speaking, who)
        case AllPlaying():
            speaking = voice if voice.me is not None else voice.about(None, Subject.PLAYERS)
            if {each.side for each in who.who if each.role is PLAIN} == set(voice.play.side_ids):
                return voice.say("all players in play")
            return voice.say("all {players} who are in play", players=speaking.players(who.who, None, True))


def _go(moment: Moment, effect: Go) -> str:
    voice = moment.voice
    who, several = _mover(moment, effect.who), _several(effect.who)
    side = mover_side(moment, effect.who)
    parts = []
    if effect.becomes.side in voice.play.side_ids and isinstance(effect.becomes.side, SideId):
        pattern = "{who} join {side}" if several else "{who} joins {side}"
        joined = _side(moment, effect.becomes.side)
        if side not in (None, moment.actor) and effect.becomes.side == moment.actor:
            joined = voice.say(OF_THE_DOER)
        parts.append(voice.say(pattern, who=who, side=joined))
    if isinstance(effect.becomes.role, RoleId):
        role = voice.nouns.with_article("a", voice.nouns.role(effect.becomes.role), several)
        parts.append(voice.say("{who} become {role}" if several else "{who} becomes {role}", who=who, role=role))
    elif effect.becomes.role is PLAIN:
        role = voice.nouns.with_article("a", voice.nouns.noun(PLAYER), several)
        parts.append(voice.say("{who} become {role}" if several else "{who} becomes {role}", who=who, role=role))
    if effect.to is Presence.OUT:
        pattern = "{who} are out for the rest of the round" if several else "{who} is out for the rest of the round"
        parts.append(voice.say(pattern, who=who))
    elif isinstance(effect.to, At):
        parts.append(_goes(moment, effect.to, who, several, side))
    elif isinstance(effect.who, Waiting) or not parts:
        parts.append(voice.say("{who} return to play" if several else "{who} returns to play", who=who))
    return voice.wording.listed(parts)


def _goes(moment: Moment, to: At, who: str, several: bool, side: SideId | None) -> str:
    voice = moment.voice.about(side, Subject.PLAYERS if several else Subject.PLAYER)
    owner = to.spot.owner
    if voice.me is not None and side not in (None, owner) and isinstance(owner, SideId) and owner == moment.actor:
        voice = evolve(voice, called=((owner, voice.say(OF_THE_DOER)),))  # two sides have been named before
    if to.spot.is_frozen:
        return voice.say("{who} freeze" if several else "{who} freezes", who=who)
    area = voice.play.area(to.spot)
    if area is not None and area.kind is AreaKind.QUEUE:
        pattern = "{who} wait {where}" if several else "{who} waits {where}"
        return voice.say(pattern, who=who, where=voice.place([to.spot]))
    pattern = "{who} go {where}" if several else "{who} goes {where}"
    return voice.say(pattern, who=who, where=voice.goal([to.spot]))


def _several(who: Mover) -> bool:
    return isinstance(who, AllPlaying) or (isinstance(who, Waiting) and (who.turn is Turn.ALL or who.count > 1))
