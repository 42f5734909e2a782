"""Rules in words: what happens, and what follows from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from attrs import evolve

from compose.telling.balls_sent import caught_of_whom, to_whom
from compose.telling.conditions import condition
from compose.telling.effects import effect_told
from compose.telling.empty_hands import with_a_ball, with_empty_hands
from compose.telling.granted import can_leave
from compose.telling.moment import Moment, moment_of
from compose.telling.of_others import of_others
from compose.telling.of_time import parted, timed
from compose.telling.points import points_told
from compose.telling.voice import Voice
from grammar.core.clock import AtTime, TakeEffect
from grammar.core.fouls import Fouled
from grammar.core.game import Play
from grammar.core.guards import ALWAYS, Guard
from grammar.core.lives import LastLife
from grammar.core.play import Waiting
from grammar.core.precedence import narrower, overlap, written
from grammar.core.rules import Add, AllHold, Becomes, Effect, Go, Happening, KeptFor, Result, Rule
from grammar.core.runs import InARow
from grammar.core.values import SHARED, At, Population, Presence, SideId, Skill, Sort, Spot, Thing


def rules_told(voice: Voice, rules: Sequence[Rule]) -> Iterator[str]:
    """A sentence for each rule of a line; rules that differ in who acts alone are one."""
    for rule in rules:
        yield rule_told(voice, rule)


def rule_told(voice: Voice, rule: Rule) -> str:
    """When ..., ..., and what is asked before it."""
    return _alone(voice, rule, _asked_after(voice, rule))


def _alone(voice: Voice, rule: Rule, after: str = "") -> str:
    """When ..., ...: who acts is called "a player of a side" where it holds for each."""
    trigger = rule.trigger
    speaking = voice.calling("a", "a")
    moment = moment_of(voice.calling("that"), rule)
    follows = _follows(moment, rule)
    if not rule.effects:
        follows = voice.say("play goes on")
    clock, guard = parted(rule.guard)
    if isinstance(trigger, AtTime):
        voice = evolve(voice, me=None, other=None)  # nobody acts
        moment = moment_of(voice, rule)
        follows = _follows(moment, rule)
        return timed(voice, clock, _at_time(voice, trigger, moment, guard, follows + after))
    counting = isinstance(trigger, Becomes)
    event = condition(voice.calling("a"), trigger.guard) if isinstance(trigger, Becomes) else _event(speaking, trigger)
    if guard != ALWAYS:
        event = voice.say("{event} while {condition}", event=event, condition=condition(moment.voice, guard))
    pattern = "as soon as {event}, {follows}" if counting else "when {event}, {follows}"
    if isinstance(trigger, Becomes) and trigger.each:
        pattern = "as soon as {event}, and again with each more, {follows}"
    return timed(voice, clock, voice.say(pattern, event=event, follows=follows + after))


def _follows(moment: Moment, rule: Rule) -> str:
    others = [each for each in rule.effects if isinstance(each, Add) and each.side != moment.actor]
    alike = len(others) > 1 and len({each.points for each in others}) == 1 and moment.concerned is None
    said = []
    for each in _together(moment, rule):
        if alike and each in others:
            said += [points_told(moment, others[0], [one.side for one in others])] if each is others[0] else []
        elif not isinstance(each, TakeEffect):
            said.append(effect_told(moment, each))
    return moment.voice.wording.listed(said)


def _together(moment: Moment, rule: Rule) -> Sequence[Effect]:
    """The effects of a rule; those who come back of every side but that of who did it are told as one."""
    back = [each for each in rule.effects if isinstance(each, Go) and isinstance(each.who, Waiting)]
    those = [each.who for each in back if isinstance(each.who, Waiting)]
    nobody = frozenset[Any]()
    alike = {evolve(go, who=evolve(who, who=nobody, at=nobody)) for go, who in zip(back, those, strict=True)}
    sides = {one.side for each in those for one in each.who}
    if moment.actor is None or sides != set(moment.voice.play.others(moment.actor)) or not len(those) > len(alike) == 1:
        return rule.effects
    at = frozenset(spot for each in those for spot in each.at)
    all_of_them = evolve(those[0], who=frozenset(one for each in those for one in each.who), at=at)
    return [*(each for each in rule.effects if each not in back), evolve(back[0], who=all_of_them)]


def _at_time(voice: Voice, trigger: AtTime, moment: Moment, guard: Guard, follows: str) -> str:
    if guard != ALWAYS:
        follows = voice.say("if {condition}, {follows}", condition=condition(moment.voice, guard), follows=follows)
    pattern = "every {time}, {follows}" if trigger.again else "after {time}, {follows}"
    return voice.say(pattern, time=voice.time(trigger.at_s), follows=follows)


def _asked_after(voice: Voice, rule: Rule) -> str:
    """The lines that are asked before this one where both could hold: as they stand, in another language as told."""
    asked = {one.lines[0]: one for one in _before(voice.play, rule)}
    if voice.wording.english:
        first = [f"“{voice.core.lines[number].words}”" for number in sorted(asked)]
    else:
        first = [f"« {_alone(voice, asked[number])} »" for number in sorted(asked)]
    return voice.say(", unless this comes first: {lines}", lines="; ".join(first)) if first else ""


def _before(play: Play, rule: Rule) -> Iterator[Rule]:
    """The rules that are asked before another: by the order of the sheet, or as they are narrower and say all anew."""
    yield from (one for one, other in play.before if other == rule)
    if not rule.granted:
        said = written(rule)
        meet = (each for each in play.rules if not each.granted and overlap(each.trigger, rule.trigger))
        yield from (each for each in meet if narrower(each.trigger, rule.trigger) and said <= written(each))


def _event(voice: Voice, trigger: Happening | KeptFor | AllHold | LastLife | InARow | Fouled) -> str:
    match trigger:
        case InARow():
            skills = voice.wording.listed((voice.nouns.skill(each) for each in Skill if each in trigger.skills), "or")
            return voice.does(
                [trigger.side],
                "{side} succeeds {number} times in a row ({skills})",
                "{side} succeed {number} times in a row ({skills})",
                number=str(trigger.number),
                skills=skills,
            )
        case LastLife():
            return voice.say("{who} loses the last life", who=_one(voice, trigger.who))
        case Fouled():
            of_several = len(trigger.against) < len(voice.play.sides) - 1
            pattern = "{who} fouls somebody of {side}" if of_several else "{who} fouls"
            return voice.say(pattern, who=_one(voice, trigger.who), side=voice.sides(trigger.against, "or"))
        case AllHold():
            return voice.say("everyone has held a ball for {time}", time=voice.time(trigger.time_s))
        case KeptFor():
            who, ball, time = _one(voice, trigger.who), voice.balls(trigger.balls), voice.time(trigger.limit_s)
            return voice.say("{who} holds {ball} longer than {time}", who=who, ball=ball, time=time)
        case Happening():
            said = _happening(voice, trigger)
            return voice.say("{event} after a bounce", event=said) if trigger.bounced else said


def _one(voice: Voice, who: frozenset[Population]) -> str:
    return voice.players(who, "a", False)


def _happening(voice: Voice, trigger: Happening) -> str:
    from_there = voice.place([each.spot for each in trigger.whence]) if trigger.whence else ""
    if trigger.from_m is not None:
        from_there = voice.say("from {distance} away or farther", distance=voice.metres(trigger.from_m))
    who, balls = f"{_one(voice, trigger.by)} {from_there}".strip(), {ball for ball in trigger.balls if ball is not None}
    every = set(voice.play.of_sort(Sort.BALL))
    ball = voice.balls(balls) or voice.nouns.with_article("a", voice.nouns.noun("ball"), False)
    any_skill = set(trigger.skills) in (set(), set(Skill))
    skills = "" if any_skill else f" ({voice.wording.listed(_skills(voice, trigger), 'or')})"
    having = "" if balls in (set(), every) else voice.say(" with {ball}", ball=ball)
    side = next(iter(trigger.by)).side
    owners = [owner for owner in trigger.against if owner != side] or list(voice.play.others(side))
    match trigger.result:
        case Result.KNOCKED:
            things = frozenset(to for to in trigger.to if isinstance(to, Thing))
            return voice.say("{who} knocks {what}", who=who, what=_knocked(voice, side, things)) + having + skills
        case Result.HIT | Result.HIGH | Result.TOUCHED:
            whom = with_a_ball(voice, trigger.holding, _hit(voice, side, _players(trigger)), False)
            said = voice.say(TO_SOMEBODY[trigger.result], who=who, whom=whom)
            return said if trigger.result is Result.TOUCHED else said + having + skills
        case Result.THROUGH:
            return _through(voice, trigger, who, ball) + skills
        case Result.CROSSED:
            lines = [to for to in trigger.to if isinstance(to, Spot)]
            sent = voice.say("{who} sends {ball} past {what}", who=who, ball=ball, what=voice.bare_place(lines))
            return sent + skills
        case Result.PASSED:
            where = _where(voice, trigger)
            return voice.say("a pass by {who} reaches a team-mate{where}", who=who, where=where) + having
        case Result.TAKEN:
            return voice.say("{who} takes {what}", who=who, what=ball)
        case Result.ARRIVED:
            things = frozenset(to for to in trigger.to if isinstance(to, Thing))
            what = voice.things(things, False, "a") if things else "" if None in trigger.balls else ball
            there = f" {voice.place(sorted(trigger.reaching, key=repr))}" if trigger.reaching else ""
            said = voice.say("{who} arrives", who=who) + there
            return said + (voice.say(" with {ball}", ball=what) if what else "")
        case Result.CAUGHT:
            catchers = _players(trigger) if trigger.to or owners else trigger.by  # each for themselves: one of them
            catching = _one(voice, catchers) if catchers else voice.sides(owners, "or")
            return voice.say(caught_of_whom(voice, trigger), who=who, ball=ball, side=catching) + skills
        case Result.MISSED | Result.BLOCKED | Result.LEFT:
            return voice.say(_in_vain(voice, trigger.result), who=to_whom(voice, trigger, who), ball=ball) + skills


TO_SOMEBODY = {
    Result.HIT: "{who} hits {whom}",
    Result.HIGH: "{who} hits {whom} above the shoulder",
    Result.TOUCHED: "{who} touches {whom}",
}
IN_VAIN = {
    Result.MISSED: "{ball} sent by {who} misses",
    Result.BLOCKED: "{ball} sent by {who} is blocked",
    Result.LEFT: "{ball} sent by {who} leaves the court",
}


def _in_vain(voice: Voice, result: Result) -> str:
    """What misses, is blocked or leaves the court; where that has rules of its own, what leaves it is no miss."""
    stays = result is Result.MISSED and can_leave(voice.play)
    return "{ball} sent by {who} misses, but stays on the court" if stays else IN_VAIN[result]


def _through(voice: Voice, trigger: Happening, who: str, ball: str) -> str:
    """Through a ring, or into what is open and none."""
    things = frozenset(to for to in trigger.to if isinstance(to, Thing))
    if any(voice.play.kind(each.kind).sort is Sort.TARGET for each in things):
        box = of_others(voice, things, False, "a")
        return voice.say("{who} sends {ball} into {what}", who=who, ball=ball, what=box)
    return voice.say("{who} sends {ball} through {what}", who=who, ball=ball, what=of_others(voice, things))


def _players(trigger: Happening) -> frozenset[Population]:
    return frozenset(to for to in trigger.to if isinstance(to, Population))


def _skills(voice: Voice, trigger: Happening) -> Iterator[str]:
    return (voice.nouns.skill(skill) for skill in Skill if skill in trigger.skills)


def _hit(voice: Voice, side: SideId, hit: frozenset[Population]) -> str:
    """Who is hit: where all play for themselves, another of them."""
    if {each.side for each in hit} != {side}:
        return with_empty_hands(voice, hit, _one(voice, hit))
    another = voice.say("another {player}", player=voice.players(hit, None, False))
    return with_empty_hands(voice, hit, voice.players(hit, "another", False) if voice.wording.english else another)


def _knocked(voice: Voice, side: SideId, things: frozenset[Thing]) -> str:
    """What falls; where that is somebody's own, it is by accident."""
    said = voice.things(frozenset(evolve(each, owner=SHARED) for each in things), False, "a")
    if {each.owner for each in things} == {side} and len(voice.play.sides) > 1:
        return voice.say("{thing} of their own side", thing=said)
    return of_others(voice, things, False, "a")


def _where(voice: Voice, trigger: Happening) -> str:
    spots = [at.spot for at in trigger.at if isinstance(at, At)]
    said = ([voice.say("in play")] if Presence.PLAYING in trigger.at else []) + ([voice.place(spots)] if spots else [])
    return f" {voice.wording.listed(said, 'or')}" if said else ""
