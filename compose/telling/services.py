"""What else goes on while players play: where balls come to lie, who fetches, frees and stands up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from typing import Any

from attrs import evolve

from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.factor import Factor, Of
from grammar.core.play import ComeBack, Fetch, Free, Guarding, Hold, StandUp, Turn, Waiting, Who
from grammar.core.rules import Rest, Result
from grammar.core.values import SHARED, KindId, Landmark, Owner, Population, SideId, Skill, Teacher, without_load

STATES = (
    (frozenset({Result.MISSED, Result.LEFT}), "missed"),
    (frozenset({Result.CAUGHT}), "caught"),
    (frozenset({Result.KNOCKED, Result.HIT, Result.THROUGH, Result.CROSSED, Result.ARRIVED}), "scored"),
    (frozenset({Result.PASSED}), "passed"),
    (frozenset({Result.BLOCKED}), "blocked"),
)


def grouped(values: Iterable[Any], *varying: str) -> list[list[Any]]:
    """Values that differ only in these fields, together."""
    found: dict[object, list[Any]] = {}
    for value in values:
        found.setdefault(evolve(value, **dict.fromkeys(varying)), []).append(value)
    return list(found.values())


def holds_told(voice: Voice, holds: Sequence[Hold]) -> Iterator[str]:
    """How long a ball is held."""
    for group in grouped(holds, "ball"):
        balls = voice.balls([hold.ball for hold in group])
        yield voice.say("{ball} is held for at most {time}", ball=balls, time=voice.time(group[0].limit_s))


def rests_told(voice: Voice, rests: Sequence[Rest]) -> Iterator[str]:
    """Where balls come to lie; whether it hangs on whose things they are sent at is said where it does."""
    by_goal = grouped(rests, "against")
    for group in by_goal:
        said = _rest(voice, group[0])
        if sum(bool(group[0].results & other[0].results) for other in by_goal) > 1:
            owners = [owner for rest in group for owner in rest.against]
            whose = voice.wording.listed((_concerned(voice, group[0].by, owner) for owner in owners), "or")
            said = voice.say("{said} when it was meant for {whose}", said=said, whose=whose)
        yield said


def _concerned(voice: Voice, by: SideId, owner: Owner) -> str:
    if owner is SHARED:
        return voice.say("what belongs to nobody")
    return voice.say("one's own side") if owner == by else voice.sides([owner])


def _rest(voice: Voice, rest: Rest) -> str:
    sender, aimed_at = voice.say("the side of whoever sent it"), voice.say("the side that it was sent to")
    others = voice.play.others(rest.by)
    if len(others) == 1:
        aimed_at = voice.sides(others)
    speaking = evolve(voice, called=((rest.by, sender), *((other, aimed_at) for other in others)))
    speaking = speaking if voice.me is not None else voice
    if rest.to.of is Landmark.HANDS or rest.to.role is not None:
        if rest.to.owner == rest.by and rest.to.role is None:
            return voice.say("{ball} stays {side}", ball=_ball(voice, rest), side=speaking.place([rest.to]))
        if voice.me is None and len(voice.play.sides) > 1:
            pattern = "{ball} sent by {side} goes {goal}"
            return voice.say(pattern, ball=_ball(voice, rest), side=voice.name(rest.by), goal=speaking.goal([rest.to]))
        return voice.say("{ball} goes {goal}", ball=_ball(voice, rest), goal=speaking.goal([rest.to]))
    where = speaking.place([rest.to])
    patterns = (
        ("{ball} comes to lie {where}", "{ball} comes to lie somewhere {where}"),
        ("{ball} sent by {side} comes to lie {where}", "{ball} sent by {side} comes to lie somewhere {where}"),
    )
    pattern = patterns[voice.me is None][rest.spreads]
    said = voice.say(pattern, ball=_ball(voice, rest), side=voice.name(rest.by), where=where)
    return voice.say("{said}, unless another line says otherwise", said=said) if rest.loose else said


def _ball(voice: Voice, rest: Rest) -> str:
    """ "a missed foam ball"."""
    state = next((word for results, word in STATES if results == rest.results), None)
    said = []
    if rest.skills != frozenset(Skill):
        skills = voice.wording.listed((voice.nouns.skill(skill) for skill in Skill if skill in rest.skills), "or")
        return voice.say("{ball} ({skills})", ball=_ball(voice, evolve(rest, skills=frozenset(Skill))), skills=skills)
    for ball in voice.nouns.balls(rest.balls):
        one = ball.one if state is None else voice.say(f"{state} {{ball}}", ball.feminine, ball=ball.one)
        said.append(voice.nouns.with_article("a", evolve(ball, one=one), False))
    return voice.wording.listed(said, "or")


def _doers(voice: Voice, who: Who) -> tuple[str, Voice]:
    """Who does it, and the voice in which "their" is of them."""
    if isinstance(who, Teacher):
        return voice.nouns.with_article("the", voice.nouns.noun("teacher"), False), voice.about(None, Subject.PLAYERS)
    side = next(iter(who)).side
    return voice.calling("each").players(who), voice.about(side, Subject.PLAYERS)


def fetches_told(voice: Voice, fetches: Sequence[Fetch]) -> Iterator[str]:
    """Who fetches which balls from where."""
    for group in in_both(fetches):
        first: Fetch = group[0]
        who, speaking = _doers(voice, first.who)
        balls = voice.balls([each.ball for each in group], True, None if voice.wording.english else "the")
        where = speaking.source(frozenset(each.spot for each in group))
        one = isinstance(first.who, Teacher)
        pattern = "{who} fetches {what} {where}" if one else "{who} fetch {what} {where}"
        only = voice.say(", but only one of them at a time") if first.alone else ""
        only += voice.say("; whoever is first there has it") if all(_is_run_for(voice, each) for each in group) else ""
        yield voice.say(pattern, who=who, what=balls, where=where) + voice.often(first.per_minute) + only


def _is_run_for(voice: Voice, fetch: Fetch) -> bool:
    """Whether players of several sides fetch balls from there."""
    there = [each.who for each in voice.play.services if isinstance(each, Fetch) and each.spot == fetch.spot]
    return len({one.side for who in there if not isinstance(who, Teacher) for one in who}) > 1


def in_both(fetches: Sequence[Any]) -> list[list[Any]]:
    """Those that fetch the same balls from several places, and several balls from the same places."""
    by_ball: dict[object, list[Any]] = {}
    for group in grouped(fetches, "spot"):
        key = (evolve(group[0], ball=KindId(""), spot=None), frozenset(each.spot for each in group))
        by_ball.setdefault(key, []).extend(group)
    return list(by_ball.values())


def waiting(voice: Voice, who: Waiting) -> str:
    """ "the first in the heron queue of their side"."""
    side = next(iter(who.who)).side
    if all(spot.is_frozen for spot in who.at):
        if who.turn is Turn.ALL:
            return voice.say("all {who} who are frozen", who=voice.players(who.who, None, True))
        return voice.say("{who} who is frozen", who=voice.players(who.who, "a", False))
    where = voice.place(who.at)
    if who.count > 1:
        pattern = "the last {count} {where}" if who.turn is Turn.LAST else "the first {count} {where}"
        return voice.say(pattern, count=voice.wording.figure(who.count), where=where)
    roles = {without_load(each.role) for each in who.who if each.side == side}
    shared = any(spot.owner is SHARED for spot in who.at) and len(voice.play.sides) > 1
    owners = {spot.owner for spot in who.at} - {SHARED}
    strangers = bool(owners) and owners != {each.side for each in who.who}
    if shared or (strangers and len(who.at) == 1) or roles != set(voice.play.tasks_of(side)):
        patterns = {
            Turn.FIRST: "the first of {who} {where}",
            Turn.LAST: "the last of {who} {where}",
            Turn.ALL: "all of {who} {where}",
        }
        return voice.say(patterns[who.turn], who=voice.players(who.who), where=where)
    patterns = {
        Turn.FIRST: "the first {where}",
        Turn.LAST: "the last {where}",
        Turn.ALL: "all {where}",
    }
    return voice.say(patterns[who.turn], where=where)


def frees_told(voice: Voice, frees: Sequence[Free]) -> Iterator[str]:
    """Who brings back whom."""
    for free in frees:
        who, speaking = _doers(voice, free.who)
        pattern = "{who} frees {what}" if isinstance(free.who, Teacher) else "{who} free {what}"
        if free.together > 1:
            who = voice.say("{number} of {who} together", number=str(free.together), who=who)
        freed = waiting(evolve(speaking, rest="a"), free.waiting)
        often = voice.often(free.per_minute)
        pause = "," if often and all(spot.is_frozen for spot in free.waiting.at) else ""  # not how often they froze
        yield voice.say(pattern, who=who, what=freed) + pause + often


def come_backs_told(voice: Voice, values: Sequence[ComeBack]) -> Iterator[str]:
    """Who comes back by themselves."""
    for value in values:
        point = voice.say("the next point")
        where, time = voice.place(value.at), point if value.after_s is None else voice.time(value.after_s)
        if all(spot.is_frozen for spot in value.at):
            who = voice.calling("each").players(value.who)
            yield voice.say("{who} who are frozen are free after {time}", who=who, time=time)
            continue
        yield voice.say("whoever waits {where} comes back after {time}", where=where, time=time)


def stand_ups_told(voice: Voice, values: Sequence[StandUp]) -> Iterator[str]:
    """Who puts up what."""
    for group in grouped(values, "thing"):
        first: StandUp = group[0]
        who, speaking = _doers(voice, first.who)
        what = speaking.things({each.thing for each in group}, False, "a")
        pattern = "{who} stands up {what}" if isinstance(first.who, Teacher) else "{who} stand up {what}"
        yield voice.say(pattern, who=who, what=what) + voice.often(first.per_minute)


def guardings_told(voice: Voice, values: Sequence[Guarding]) -> Iterator[str]:
    """How many may guard."""
    for group in grouped(values, "thing"):
        first: Guarding = group[0]
        one = first.most == 1
        side = next(iter(first.who)).side
        who = f"{voice.wording.figure(first.most)} {guards(voice, first.who, not one)}"
        theirs = voice.about(side, Subject.PLAYER if one else Subject.PLAYERS)
        what = theirs.things({each.thing for each in group}, False, "each")
        yield voice.say("at most {who} guards {what}" if one else "at most {who} guard {what}", who=who, what=what)


def guards(voice: Voice, who: frozenset[Population], several: bool) -> str:
    """Those of them who are meant, as each side has them: "guard of each side"."""
    return voice.calling("each").players(who, None, several)


def factors_told(voice: Voice, factors: Sequence[Factor]) -> Iterator[str]:
    """Attempts rarer or slower."""
    for factor in factors:
        percent = voice.wording.figure(float(factor.by * Fraction(100)))
        pattern = "attempts succeed {percent} % as often"
        if factor.of is Of.TIME:
            pattern = "attempts take {percent} % as long"
        yield voice.say(pattern, percent=percent)
