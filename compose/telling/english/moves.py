"""What happens: "a north player throws a foam ball overarm at a south lantern and knocks it; it stays down"."""

from __future__ import annotations

from collections.abc import Sequence
from functools import singledispatch

from compose.check.walk import followed
from compose.net.net import Move, Net, Reaction, Transition
from compose.net.outcome import Moment
from compose.net.told import (
    AllHeld,
    BecameSo,
    CameBack,
    Doer,
    Fetched,
    FouledSo,
    Freed,
    Held,
    RanOn,
    StoodUp,
    Strayed,
    Ticked,
    TimeOver,
    Tried,
)
from compose.telling.english.counts import guard_words, over_words, time_words
from compose.telling.english.effects import Tight, follows_words, waiting_words
from compose.telling.english.places import in_a_row, lying, of_side, player_noun, standing_words
from compose.telling.sides import does
from grammar.core.play import Along, AtPlayers, AtThing, Past, PickUp, Through, ToMate
from grammar.core.rules import Result
from grammar.core.skills import SKILL_WORDS
from grammar.core.values import AreaId, At, Laden, Population, Skill, Spot, Teacher, Thing
from grammar.words import article

_TRIES = {Skill.TOUCH: "goes after", Skill.TAKE: "runs to"}  # what they do before it is known how it ends
_ENDS = {
    Result.KNOCKED: "and knocks it",
    Result.HIT: "and hits",
    Result.TOUCHED: "and touches",
    Result.THROUGH: "and it goes through",
    Result.CROSSED: "and it crosses",
    Result.PASSED: "and it arrives",
    Result.ARRIVED: "and arrives",
    Result.TAKEN: "and takes it along",
    Result.MISSED: "and misses",
    Result.BLOCKED: "and it is blocked",
    Result.HIGH: "and hits above the shoulder",
    Result.LEFT: "and the ball leaves the court",
}


def move_words(net: Net, move: Transition | Reaction) -> str:
    """A move, or what follows at once from one."""
    moves = (effect for effect in move.effects if isinstance(effect, Move) and effect.rooms)
    there = {net.places[effect.target].standing for effect in moves}
    return "; ".join(clauses(move.told, net, frozenset(each for each in there if isinstance(each, At))))


def step_words(net: Net, before: Sequence[int], number: int) -> str:
    """A move (the number of a transition) out of a marking, with all that followed at once."""
    acts: tuple[Transition | Reaction, ...] = (net.transitions[number], *followed(net, before, number))
    return "; ".join(move_words(net, each) for each in acts)


@singledispatch
def clauses(told: object, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    """What happens, and clause by clause what follows from it; where it is `tight` only if there is room."""
    raise TypeError(type(told).__name__)


@clauses.register
def _(told: Tried, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    stops = () if told.stops is None else (f"the ball stops {lying(told.stops)}",)
    return (
        f"{_attempt(told.moment)} {_outcome(told.moment)}",
        *follows_words(net, told.effects, told.moment.skill, tight),
        *stops,
    )


@clauses.register
def _(told: Strayed, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    thing = told.hit.moment.thing
    assert thing is not None
    missed, (_, *follows) = "; ".join(clauses(told.missed, net, tight)), clauses(told.hit, net, tight)
    return f"{missed}, but the ball hits {_thing(thing)}", *follows


@clauses.register
def _(told: Held, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return f"{_player(told.who)} holds a {told.ball.key} too long", *follows_words(net, told.effects, tight=tight)


@clauses.register
def _(told: FouledSo, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    whom = f" somebody of {told.against.key}" if told.against else ""
    return f"{_player(told.who)} fouls{whom}", *follows_words(net, told.effects, tight=tight)


@clauses.register
def _(told: AllHeld, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return f"everyone holds a ball for {float(told.time_s):g} s", *follows_words(net, told.effects, tight=tight)


@clauses.register
def _(told: Fetched, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return (f"{_doer(told.who)} fetches a {told.ball.key} from {lying(told.spot).removeprefix('in ')}",)


@clauses.register
def _(told: Freed, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return (f"{_doer(told.who)} frees {waiting_words(told.waiting)}",)


@clauses.register
def _(told: StoodUp, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return (f"{_doer(told.who)} stands up {_thing(told.thing)}",)


@clauses.register
def _(told: CameBack, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    if told.spot.is_frozen:
        return (f"{_player(told.who)} who was frozen is free again",)
    there = standing_words(At(told.spot), told.who.side).removeprefix("in ").removeprefix("on ")
    return (f"{_player(told.who)} comes back from {there}",)


@clauses.register
def _(told: Ticked, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    when = f"every {time_words(told.at_s)}" if told.again else over_words(told.at_s)
    return when, *follows_words(net, told.effects, tight=tight)


@clauses.register
def _(told: TimeOver, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return ("the time is over",)


@clauses.register
def _(told: BecameSo, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    return guard_words(net, told.guard), *follows_words(net, told.effects, tight=tight)


@clauses.register
def _(told: RanOn, net: Net, tight: Tight = frozenset()) -> tuple[str, ...]:
    run = told.run
    return f"{run.number} {in_a_row(run.skills, run.side)[1]}", *follows_words(net, told.effects, tight=tight)


def _thing(thing: Thing) -> str:
    return article(of_side(thing.kind.key, thing.owner))


def _player(who: Population) -> str:
    return article(player_noun(who))


def _doer(who: Doer) -> str:
    return "the teacher" if isinstance(who, Teacher) else _player(who)


def _attempt(moment: Moment) -> str:
    """What is tried: "a north player rolls a foam ball at a south cone"."""
    assert moment.skill is not None
    words = SKILL_WORDS[moment.skill]
    verb = _TRIES.get(moment.skill, words.does)
    load = article(next(iter(sorted(moment.load))).key) if moment.load else ""
    if isinstance(moment.by.role, Laden) and moment.skill is Skill.CARRY:
        load = "it"
    ball = article(moment.ball.key) if moment.ball else load
    where = standing_words(moment.by_at, moment.by.side) if isinstance(moment.by_at, At) else ""
    parts = (_player(moment.by), where, verb, ball, words.way.strip(), _aim(moment))
    return " ".join(part for part in parts if part)


def _aim(moment: Moment) -> str:
    match moment.aim:
        case AtThing():
            return f"at {_thing(moment.aim.thing)}"
        case AtPlayers():
            whom = _player(moment.person) if moment.person else "a player"
            if moment.held is not None:
                whom = f"{whom} who has {article(moment.held[0].key)}"
            return whom if moment.skill is Skill.TOUCH else f"at {whom}"
        case Through():
            return f"{'into' if moment.aim.into else 'through'} {_thing(moment.aim.thing)}"
        case Past():
            line = moment.aim.line
            name = lying(Spot(line.of, line.owner), bare=True).removeprefix("on the ")
            return f"past the {of_side(name, line.owner)}"
        case ToMate():
            at = moment.mate_at or next(iter(sorted(moment.aim.at, key=repr)))
            if isinstance(at, At) and at.spot.is_frozen:
                return "to a frozen team-mate"
            return f"to a team-mate {standing_words(at, moment.by.side)}" if isinstance(at, At) else "to a team-mate"
        case PickUp():
            return lying(moment.aim.start)
        case Along():
            goal = moment.aim.goal.of
            back = " and back" if moment.aim.back else ""
            return f"to the {goal.key if isinstance(goal, AreaId) else goal.value}{back}"
    return ""


def _outcome(moment: Moment) -> str:
    after = " after a bounce" if moment.bounced else ""
    if moment.catcher is not None:
        return f"and {_player(moment.catcher)} catches it{after}"
    if moment.result is Result.CAUGHT and moment.concerned is not None:
        return f"and {does(moment.concerned.key, 'catches', 'catch')} it{after}"
    if isinstance(moment.aim, Through) and moment.aim.into and moment.result is Result.THROUGH:
        return f"and it goes in{after}"
    assert moment.result is not None
    return f"{_ENDS[moment.result]}{after}"
