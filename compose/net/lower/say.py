"""Places, attempts and what follows, in words: "a north player throws a foam ball overarm at a south lantern"."""

from __future__ import annotations

from collections.abc import Iterable

from compose.net.lower.moment import Moment
from compose.net.lower.say_places import lying, of_side, player_noun, standing_words
from compose.net.side_words import does, is_plural
from grammar.core.clock import ComeIn, TakeAway, TakeEffect
from grammar.core.loads import Lies, SetDown
from grammar.core.play import Along, AtPlayers, AtThing, Past, PickUp, Through, ToMate, Turn, Waiting
from grammar.core.rules import (
    Add,
    AllPlaying,
    Effect,
    Finish,
    Go,
    LifeOf,
    Own,
    Person,
    PlayOn,
    Put,
    PutOnStep,
    Result,
    SendBall,
    SendBalls,
    Shift,
    StartAgain,
    Swap,
)
from grammar.core.values import (
    PLAIN,
    SAME,
    AreaId,
    At,
    Landmark,
    Part,
    Population,
    Posture,
    Presence,
    SideId,
    Skill,
    Spot,
    Thing,
)
from grammar.words import article, count, listing

_DOES = {
    Skill.OVERARM_THROW: ("throws", "overarm"),
    Skill.UNDERARM_THROW: ("throws", "underarm"),
    Skill.ROLL: ("rolls", ""),
    Skill.KICK: ("kicks", ""),
    Skill.STRIKE: ("strikes", ""),
    Skill.PASS: ("passes", ""),
    Skill.CARRY: ("carries", ""),
    Skill.TOW: ("tows", ""),
    Skill.PUSH: ("pushes", ""),
    Skill.RUN: ("runs", ""),
    Skill.TOUCH: ("goes after", ""),
    Skill.TAKE: ("runs to", ""),
}
_ENDS = {
    Result.KNOCKED: "and knocks it",
    Result.HIT: "and hits",
    Result.TOUCHED: "and touches",
    Result.THROUGH: "and it goes through",
    Result.CROSSED: "and it crosses",
    Result.PASSED: "and it is caught",
    Result.ARRIVED: "and arrives",
    Result.TAKEN: "and takes it along",
    Result.MISSED: "and misses",
    Result.BLOCKED: "and it is blocked",
    Result.LEFT: "and the ball leaves the court",
}
_PERSONS = {Person.OBJECT: "that player", Person.CATCHER: "the catcher", Person.MATE: "the catcher"}
_AGENTS = {
    Skill.ROLL: "roller",
    Skill.KICK: "kicker",
    Skill.STRIKE: "striker",
    Skill.PASS: "passer",
    Skill.CARRY: "carrier",
    Skill.TOW: "carrier",
    Skill.PUSH: "pusher",
    Skill.RUN: "runner",
    Skill.TOUCH: "tagger",
    Skill.TAKE: "carrier",
}


def thing_words(thing: Thing) -> str:
    """Such as "a south lantern"."""
    return article(of_side(thing.kind.key, thing.owner))


def player_words(who: Population) -> str:
    """Such as "a north player", "a north keeper", "a carrier"."""
    return article(player_noun(who))


def agent(skill: Skill | None) -> str:
    """What somebody who acts is called: the thrower, the roller."""
    return f"the {_AGENTS.get(skill, 'thrower') if skill else 'player'}"


def attempt_words(moment: Moment) -> str:
    """What is tried: "a north player rolls a foam ball at a south cone"."""
    assert moment.skill is not None
    verb, manner = _DOES[moment.skill]
    load = article(next(iter(sorted(moment.load))).key) if moment.load else ""
    ball = article(moment.ball.key) if moment.ball else load
    parts = (player_words(moment.by), verb, ball, manner, _aim_words(moment))
    return " ".join(part for part in parts if part)


def _aim_words(moment: Moment) -> str:
    match moment.aim:
        case AtThing():
            return f"at {thing_words(moment.aim.thing)}"
        case AtPlayers():
            whom = player_words(moment.person) if moment.person else "a player"
            return whom if moment.skill is Skill.TOUCH else f"at {whom}"
        case Through():
            return f"through {thing_words(moment.aim.thing)}"
        case Past():
            line = moment.aim.line
            return (
                f"past the {of_side(lying(Spot(line.of, line.owner), bare=True).removeprefix('on the '), line.owner)}"
            )
        case ToMate():
            at = moment.mate_at or next(iter(sorted(moment.aim.at, key=repr)))
            return f"to a team-mate {standing_words(at, moment.by.side)}" if isinstance(at, At) else "to a team-mate"
        case PickUp():
            return lying(moment.aim.start)
        case Along():
            return f"to the {_place_words(moment.aim.goal)}"
    return ""


def _place_words(spot: Spot) -> str:
    return spot.of.key if isinstance(spot.of, AreaId) else spot.of.value


def outcome_words(moment: Moment, effects: Iterable[Effect]) -> str:
    """The attempt with its outcome and what follows from it."""
    if moment.result is Result.CAUGHT and moment.concerned is not None:
        ending = f"and {does(moment.concerned.key, 'catches', 'catch')} it"
    else:
        assert moment.result is not None
        ending = _ENDS[moment.result]
    said = "".join(f"; {words}" for words in follows_words(effects, moment.skill))
    return f"{attempt_words(moment)} {ending}{said}"


def follows_words(effects: Iterable[Effect], skill: Skill | None) -> list[str]:
    """What follows, effect by effect; what changes nothing is not said."""
    return [words for effect in effects if (words := effect_words(effect, skill))]


def effect_words(effect: Effect, skill: Skill | None = None) -> str:
    """One effect in words, "" for none."""
    match effect:
        case Put():
            return "it stays down" if effect.posture is Posture.DOWN else "it stands up again"
        case Own():
            return f"it joins {_the(effect.side)}"
        case Shift():
            return f"it moves {count(abs(effect.steps), 'step')}"
        case PutOnStep():
            return f"the {effect.thing.kind.key} goes to step {effect.to.step} of the {effect.to.track.key}"
        case SendBall():
            return f"the ball goes {_towards(effect.to)}"
        case SendBalls():
            which = "all balls go" if effect.all else "a ball goes"
            return f"{which} {_towards(effect.to)}"
        case ComeIn():
            balls = " and ".join(kind.key for kind in sorted(effect.balls))
            return f"all {balls} come in" if effect.count is None else f"{count(effect.count, balls)} in"
        case TakeAway():
            return f"every {' and '.join(kind.key for kind in sorted(effect.balls))} is taken away"
        case Add():
            verbs = ("scores", "score") if effect.points > 0 else ("loses", "lose")
            return f"{does(effect.side.key, *verbs)} {count(abs(effect.points), 'point')}"
        case StartAgain():
            return "everything starts again"
        case Finish():
            return does(effect.winner.key, "wins", "win")
        case Go():
            return _go_words(effect, skill)
        case LifeOf():
            return f"{_subject(effect.who, skill)} {'loses a life' if effect.by < 0 else 'gets a life back'}"
        case Swap():
            return f"{_subject(effect.who, skill)} changes places with {_subject(effect.other, skill)}"
        case PlayOn() | TakeEffect():
            return ""
        case SetDown():
            return _set_down_words(effect)


def _set_down_words(effect: SetDown) -> str:
    what = f"the {listing(sorted(kind.key for kind in effect.what), 'or')}"
    if isinstance(effect.to, Spot):
        return f"{what} goes {_towards(effect.to)}"
    return f"{what} goes back" if effect.to is Lies.BACK else f"{what} falls"


def _the(side: SideId) -> str:
    return f"the {side.key}" if is_plural(side.key) else side.key


def _towards(spot: Spot) -> str:
    if spot.of is Landmark.HANDS and isinstance(spot.owner, SideId):
        return f"to {spot.owner.key}"
    said = lying(spot)
    return f"to {said.removeprefix('in ').removeprefix('on ')}" if spot.part is Part.AT else said


def _subject(who: object, skill: Skill | None) -> str:
    match who:
        case Person():
            return _PERSONS.get(who) or ("its keeper" if who is Person.KEEPER else agent(skill))
        case Waiting():
            first = {Turn.FIRST: "the first", Turn.LAST: "the last", Turn.ALL: "all"}[who.turn]
            some = f" {who.count}" if who.count > 1 else ""
            return f"{first}{some} {lying(sorted(who.at, key=repr)[0])}"
        case AllPlaying():
            return f"all players of {listing(sorted({each.side.key for each in who.who}))}"
    raise TypeError(type(who).__name__)


def _go_words(effect: Go, skill: Skill | None) -> str:
    who, becomes = _subject(effect.who, skill), effect.becomes
    if becomes.role is not SAME:
        return f"{who} becomes {article('player' if becomes.role is PLAIN else becomes.role.key)}"
    if becomes.side is not SAME:
        return f"{who} joins {_the(becomes.side)}"
    if effect.to is Presence.OUT:
        return f"{who} is out"
    if isinstance(effect.to, At):
        return f"{who} goes to {lying(effect.to.spot).removeprefix('in ').removeprefix('on ')}"
    several = isinstance(effect.who, Waiting) and effect.who.count > 1
    return f"{who} return" if several else f"{who} returns"
