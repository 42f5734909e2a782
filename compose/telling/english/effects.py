"""What follows from a move, effect by effect: "it stays down", "the catcher joins the herons"."""

from __future__ import annotations

from collections.abc import Iterable

from compose.net.net import Net
from compose.telling.english.places import lying, of_side, players, plural_of
from compose.telling.sides import does, subject
from grammar.core.clock import ComeIn, TakeAway, TakeEffect
from grammar.core.loads import Lies, SetDown
from grammar.core.play import Turn, Waiting
from grammar.core.rules import (
    Add,
    AllPlaying,
    Effect,
    Finish,
    Go,
    LifeOf,
    Nothing,
    Own,
    Person,
    PlayOn,
    Put,
    PutOnStep,
    SendBall,
    SendBalls,
    Shift,
    StandAgain,
    StartAgain,
    Swap,
)
from grammar.core.skills import SKILL_WORDS
from grammar.core.values import (
    PLAIN,
    SAME,
    At,
    Landmark,
    Part,
    Population,
    Posture,
    Presence,
    RoleId,
    SideId,
    Skill,
    Spot,
    without_load,
)
from grammar.words import article, count, listing, plural

_PERSONS = {Person.OBJECT: "that player", Person.CATCHER: "the catcher", Person.MATE: "the team-mate"}


Tight = frozenset[At]  # where not all may find room


def agent(skill: Skill | None) -> str:
    """What somebody who acts is called: the thrower, the roller."""
    return f"the {SKILL_WORDS[skill].doer if skill else 'player'}"


def waiting_words(who: Waiting) -> str:
    """Such as "the first 2 in the rest queue of north"."""
    if all(spot.is_frozen for spot in who.at):
        one, several = players(_whoever(who))
        return f"all frozen {several}" if who.turn is Turn.ALL else f"a frozen {one}"
    first = {Turn.FIRST: "the first", Turn.LAST: "the last", Turn.ALL: "all"}[who.turn]
    some = f" {who.count}" if who.count > 1 else ""
    return f"{first}{some} {lying(sorted(who.at, key=repr)[0])}"


def _whoever(who: Waiting) -> Population:
    """Those who wait, as players of a role where they all have it."""
    roles = {without_load(each.role) for each in who.who}
    return Population(next(iter(who.who)).side, next(iter(roles)) if len(roles) == 1 else PLAIN)


def follows_words(
    net: Net, effects: Iterable[Effect], skill: Skill | None = None, tight: Tight = frozenset()
) -> list[str]:
    """What follows, effect by effect; what changes nothing is not said."""
    return [words for effect in effects if (words := effect_words(net, effect, skill, tight))]


def effect_words(net: Net, effect: Effect, skill: Skill | None, tight: Tight) -> str:
    """One effect in words, "" for none."""
    match effect:
        case Put():
            up = "it stays as it is" if effect.untouched else "it stands up again"
            return "it stays down" if effect.posture is Posture.DOWN else up
        case StandAgain():
            return _stand_again_words(net, effect)
        case Own():
            return f"it joins {subject(effect.side.key)}"
        case Shift():
            return f"it moves {count(abs(effect.steps), 'step')}"
        case PutOnStep():
            return f"the {effect.thing.kind.key} goes to step {effect.to.step} of the {effect.to.track.key}"
        case SendBall(Spot(Landmark.INSIDE)):
            return "the ball stays there"
        case SendBall():
            return f"the ball goes {_towards(effect.to)}"
        case SendBalls():
            which = "all balls go" if effect.all else "a ball goes"
            return f"{which} {_towards(effect.to)}"
        case ComeIn():
            return _come_in(net, effect)
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
            return f"{_go_words(effect, skill)}{', if there is room' if effect.to in tight else ''}"
        case LifeOf():
            return f"{_subject(effect.who, skill)} {'loses a life' if effect.by < 0 else 'gets a life back'}"
        case Swap():
            change = "change" if _several(effect.who) else "changes"
            some = f"{effect.number} of " if effect.number is not None else ""
            return f"{some}{_subject(effect.who, skill)} {change} places with {_subject(effect.other, skill)}"
        case PlayOn() | Nothing() | TakeEffect():
            return ""
        case SetDown():
            return _set_down_words(effect)


def _stand_again_words(net: Net, effect: StandAgain) -> str:
    if not effect.all:
        return f"a {of_side(next(iter(effect.things)).kind.key, next(iter(effect.things)).owner)} stands up again"
    which = sorted(of_side(plural_of(net, thing.kind), thing.owner) for thing in effect.things)
    return f"all {listing(which)} stand up again"


def _come_in(net: Net, effect: ComeIn) -> str:
    one = effect.count == 1
    balls = listing(kind.key if one else plural_of(net, kind) for kind in sorted(effect.balls))
    return f"{'all' if effect.count is None else effect.count} {balls} {'comes' if one else 'come'} in"


def _set_down_words(effect: SetDown) -> str:
    what = f"the {listing(sorted(kind.key for kind in effect.what), 'or')}"
    if isinstance(effect.to, Spot):
        return f"{what} goes {_towards(effect.to)}"
    return f"{what} goes back" if effect.to is Lies.BACK else f"{what} falls"


def _towards(spot: Spot) -> str:
    if spot.role is not None:
        return f"to the {of_side(spot.role.key, spot.owner)}"
    if spot.of is Landmark.HANDS and isinstance(spot.owner, SideId):
        return f"to {subject(spot.owner.key)}"
    said = lying(spot)
    return f"to {said.removeprefix('in ').removeprefix('on ')}" if spot.part is Part.AT else said


def _subject(who: object, skill: Skill | None) -> str:
    match who:
        case Person():
            return _PERSONS.get(who) or ("its keeper" if who is Person.KEEPER else agent(skill))
        case Waiting():
            return waiting_words(who)
        case AllPlaying():
            roles = {each.role for each in who.who}
            one = next(iter(roles)) if len(roles) == 1 else PLAIN
            called = plural(one.key) if isinstance(one, RoleId) else "players"
            return f"all {called} of {listing(sorted({subject(each.side.key) for each in who.who}))}"
    raise TypeError(type(who).__name__)


def _several(who: object) -> bool:
    """Whether more than one is meant."""
    return isinstance(who, AllPlaying) or (isinstance(who, Waiting) and (who.count > 1 or who.turn is Turn.ALL))


def _go_words(effect: Go, skill: Skill | None) -> str:
    who, becomes, several = _subject(effect.who, skill), effect.becomes, _several(effect.who)
    if becomes.role is not SAME:
        role = "player" if becomes.role is PLAIN else becomes.role.key
        return f"{who} become {plural(role)}" if several else f"{who} becomes {article(role)}"
    if becomes.side is not SAME:
        return f"{who} {'join' if several else 'joins'} {subject(becomes.side.key)}"
    if effect.to is Presence.OUT:
        return f"{who} {'are' if several else 'is'} out"
    if isinstance(effect.to, At) and effect.to.spot.is_frozen:
        return f"{who} {'freeze' if several else 'freezes'}"
    if isinstance(effect.to, At):
        there = lying(effect.to.spot).removeprefix("in ").removeprefix("on ")
        return f"{who} {'go' if several else 'goes'} to {there}"
    return f"{who} {'return' if several else 'returns'}"
