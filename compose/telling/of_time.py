"""The clock of a round in words: from when on something holds, what comes in, how much points count."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from compose.telling.nouns import Noun
from compose.telling.topics import Topic
from compose.telling.voice import Voice
from grammar.core.clock import ComeIn, TakeAway
from grammar.core.guards import ALWAYS, Clock, Compare, Every, Guard, Relation, Row, Taken, every
from grammar.core.play import PointsCount
from grammar.core.values import KindId, Skill

A_MINUTE_S = 60
TIMES = {0: "points count no more", 2: "points count double", 3: "points count three times"}


def part_of_round(voice: Voice, compare: Compare) -> str:
    """When a claim about the clock holds: "in the last minute", "in the first 2 minutes"."""
    if isinstance(compare.count, Taken):
        return voice.say("the first time")
    if isinstance(compare.count, Row):
        run = compare.count.run
        skills = voice.wording.listed((voice.nouns.skill(each) for each in Skill if each in run.skills), "or")
        return voice.say("after {number} successes in a row ({skills})", number=str(run.number), skills=skills)
    assert isinstance(compare.count, Clock)
    at_s, bell = compare.count.at_s, voice.play.bell
    if compare.relation is not Relation.AT_LEAST:
        if at_s == A_MINUTE_S:
            return voice.say("in the first minute")
        return voice.say("in the first {time}", time=voice.time(at_s))
    if bell is not None and bell.after_s == at_s:
        return voice.say("once the time is up")
    if bell is not None and bell.after_s - at_s < at_s:
        if bell.after_s - at_s == A_MINUTE_S:
            return voice.say("in the last minute")
        return voice.say("in the last {time}", time=voice.time(bell.after_s - at_s))
    return voice.say("after {time} of play", time=voice.time(at_s))


def parted(guard: Guard) -> tuple[tuple[Compare, ...], Guard]:
    """What a guard asks of the clock, and the rest of it."""
    parts = guard.parts if isinstance(guard, Every) else frozenset({guard})
    clock = [part for part in parts if isinstance(part, Compare) and isinstance(part.count, Clock | Taken | Row)]
    rest = [part for part in parts if part not in clock]
    return tuple(sorted(clock, key=repr)), every(list(rest)) if rest else ALWAYS


def timed(voice: Voice, clock: Iterable[Compare], said: str) -> str:
    """A sentence that holds in a part of the round."""
    for compare in clock:
        said = voice.say("{when}, {rule}", when=part_of_round(voice, compare), rule=said)
    return said


def topic_of(values: Iterable[object], usual: Topic) -> Topic:
    """What a sentence of these values is about: that points count no more is how the round ends."""
    over = all(isinstance(each, PointsCount) and each.times == 0 for each in values)
    return Topic.ENDS if over else usual


def points_count_told(voice: Voice, values: Sequence[PointsCount]) -> Iterator[str]:
    """How much points count, and when."""
    for value in values:
        clock, _ = parted(value.guard)
        yield timed(voice, clock, voice.say(TIMES[value.times]))


def come_or_go_told(voice: Voice, effect: ComeIn | TakeAway) -> str:
    """Balls that come in, or are taken away."""
    if isinstance(effect, TakeAway):
        return voice.say("{balls} are taken away", balls=_all(voice, effect.balls))
    if effect.count is None:
        return voice.say("{balls} that the teacher has come in", balls=_all(voice, effect.balls))
    nouns = voice.nouns.balls(effect.balls)
    balls = voice.wording.listed((voice.counted(effect.count, noun) for noun in nouns), "or")
    return voice.say("{balls} comes in" if effect.count == 1 else "{balls} come in", balls=balls)


def _all(voice: Voice, balls: Iterable[KindId]) -> str:
    nouns: tuple[Noun, ...] = voice.nouns.balls(list(balls))
    return voice.wording.listed(voice.nouns.with_article("all", noun, True) for noun in nouns)
