"""How it ends, in words: ways to win, the clock, ties, and what is played in all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.conditions import condition, counted
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.ends import (
    Bell,
    Best,
    Deciding,
    End,
    EndPoints,
    Left,
    Lost,
    Match,
    Meeting,
    Most,
    NextKnocked,
    NoWinner,
    Seats,
    Tie,
    Verdict,
    Won,
)
from grammar.core.guards import PlayersAt
from grammar.core.relays import counts_runs


def ends_told(voice: Voice, ends: Sequence[End]) -> Iterator[str]:
    """Ways to end the round. Who wins comes first where a guard has one winner."""
    for end in ends:
        first = end.verdicts[0]
        if isinstance(first, Won):
            speaking = voice.calling("a")
            claimed = condition(speaking.about(first.side, Subject.SIDE), end.guard)
            yield voice.say("{winning} when {condition}", winning=speaking.wins(first.side), condition=claimed)
        else:
            claimed = condition(voice.calling("a"), end.guard)
            result = verdicts_told(voice, end.verdicts)
            yield voice.say("the round ends when {condition}: {result}", condition=claimed, result=result)


def verdicts_told(voice: Voice, verdicts: Sequence[Verdict]) -> str:
    """What decides, and what does where that is level."""
    said = _verdict(voice, verdicts[0])
    for order, verdict in enumerate(verdicts[1:]):
        pattern = "{before}; if that is level too, {result}" if order else "{before}; if that is level, {result}"
        said = voice.say(pattern, before=said, result=_verdict(voice, verdict))
    return said


def _verdict(voice: Voice, verdict: Verdict) -> str:
    match verdict:
        case Won():
            return voice.wins(verdict.side)
        case Best():
            return voice.say("the player with the most points wins, and those who are level share it")
        case Left():
            return voice.say("those who are left in play have won")
        case NoWinner.DRAW:
            return voice.say("it is a draw")
        case Deciding.NEXT_POINT:
            return voice.say("play goes on and the next point wins")
        case NextKnocked():
            things = voice.wording.listed([voice.nouns.kind(kind).one for kind in sorted(verdict.kinds)], "or")
            return voice.say("play goes on and the next {thing} knocked wins", thing=things)
        case NoWinner.NOBODY:
            return voice.say("nobody wins")
        case Lost():
            return voice.does({verdict.side}, "{side} loses", "{side} lose")
        case Most():
            pattern = "the side with more {things} wins" if verdict.more else "the side with fewer {things} wins"
            return voice.say(pattern, things=_compared(voice, verdict))


def more_told(voice: Voice, verdict: Most) -> str:
    """What the winner has more or fewer of."""
    return voice.say("more {things}" if verdict.more else "fewer {things}", things=_compared(voice, verdict))


def _compared(voice: Voice, verdict: Most) -> str:
    _, count = min(verdict.counts, key=lambda each: voice.play.side_ids.index(each[0]))
    noun, state = counted(_of_each(voice), count)
    return f"{noun.many} {state}".rstrip()


def _of_each(voice: Voice) -> Voice:
    """What each side has is compared: its own places are "its"."""
    first = voice.play.side_ids[0]
    return voice.about(first, Subject.SIDE)


def bells_told(voice: Voice, bells: Sequence[Bell]) -> Iterator[str]:
    """The clock."""
    for bell in bells:
        pattern = "after {time} the round is over: {result}"
        if voice.play.match.halves:
            match = voice.play.match
            pattern = "each innings lasts {time}: {result}" if match.of_innings else "each half lasts {time}: {result}"
            pattern = "each round lasts {time} at most: {result}" if match.of_rounds else pattern
        elif isinstance(bell.verdicts[0], Most | Best):
            pattern = "after {time}, {result}"
        yield voice.say(pattern, time=voice.time(bell.after_s), result=verdicts_told(voice, bell.verdicts))


def end_points_told(voice: Voice, values: Sequence[EndPoints]) -> Iterator[str]:
    """What counts for a side when the round is over."""
    for value in values:
        noun, state = counted(voice.about(value.side, Subject.SIDE), value.count)
        thing = noun.one
        if isinstance(value.count, PlayersAt) and value.side not in {who.side for who in value.count.of}:
            thing = voice.players(value.count.of, None, False)
        yield voice.does(
            {value.side},
            "at the end {side} has {points} more for each {thing}",
            "at the end {side} have {points} more for each {thing}",
            points=voice.wording.counted(value.each, "point", "points"),
            thing=f"{thing} {state}".rstrip(),
        )


def ties_told(voice: Voice, ties: Sequence[Tie]) -> Iterator[str]:
    """Two winners with one move."""
    for tie in ties:
        result = _verdict(voice, tie.verdict)
        yield voice.say("if this happens for both sides at once, {result}", result=result)


_MEETINGS = {
    Meeting.WINNER_STAYS: "of {sides} two play and the winner stays on, for {rounds}; after a draw whoever has played "
    "longer rests",
    Meeting.WINNERS_MEET: "of {sides} two play on each of two courts for {rounds}; after each of them the winners "
    "meet, and so do the losers; after a draw a lot decides who goes with the winners",
}


def _of_groups(voice: Voice, match: Match) -> Iterator[str]:
    """Who of more groups than two plays whom."""
    assert match.meeting is not None
    sides = voice.wording.counted(match.groups, "side", "sides")
    rounds = voice.wording.counted(match.rounds, "round", "rounds")
    if match.meeting is not Meeting.ALL_MEET_ALL:
        yield voice.say(_MEETINGS[match.meeting], sides=sides, rounds=rounds)
        return
    pattern = "of {sides} two play at a time, until all have met all"
    if match.courts > 1:
        pattern = "of {sides} two play on each of two courts, until all have met all"
    if (times := match.rounds // match.till_all_met) > 1:
        times_said = voice.wording.counted(times, "time", "times")
        pattern = voice.say("{meeting} {times}", meeting=voice.wording.say(pattern, sides=sides), times=times_said)
    yield voice.say(pattern, sides=sides)


def _of_places(voice: Voice, match: Match) -> Iterator[str]:
    """What each place of a round is worth."""
    if not match.places:
        return
    first, *others = (voice.wording.figure(each) for each in match.places)
    pattern = (
        "whoever wins a round has {first} points, the next {others}, by the points of the round; "
        "level sides share the better place"
    )
    if not voice.play.gives_points and counts_runs(voice.play):
        pattern = (
            "whoever wins a round has {first} points, the next {others}, by how often they have run by then; "
            "level sides share the better place"
        )
    if len(match.places) == 1:
        pattern = "whoever wins a round has {first} points; level sides share them"
    yield voice.say(pattern, first=first, others=voice.wording.listed(others))


def matches_told(voice: Voice, matches: Sequence[Match]) -> Iterator[str]:
    """Rounds and halves."""
    for match in matches:
        if match.meeting is not None:
            yield from _of_groups(voice, match)
        elif match.rounds > 1:
            yield voice.say("play the best of {rounds}", rounds=voice.wording.counted(match.rounds, "round", "rounds"))
        added = match.halves and match.by_points is not False
        whole = f"; {voice.say('more points in all wins, level points are a draw')}" if added else ""
        if match.of_rounds:
            pattern = "{parts} rounds are played and their points added"
            pattern = "{parts} rounds are played and the points of their places added" if match.places else pattern
            pattern = pattern if match.by_points else "{parts} rounds are played: whoever wins more of them has won"
            yield voice.say(pattern, parts=voice.wording.figure(match.parts)) + whole
            yield from _of_places(voice, match)
        elif match.of_innings:
            pattern = "{parts} innings are played and their points added: the sides change tasks after each"
            yield voice.say(pattern, parts=voice.wording.figure(match.parts)) + whole
        elif match.halves:
            change = "the sides change tasks" if match.change is Seats.TASKS else "the sides change ends"
            pattern = "two halves are played and their points added: {change} at half-time"
            pattern = "two halves are played and their points added" if match.change is Seats.NOTHING else pattern
            yield voice.say(pattern, change=voice.say(change)) + whole
        elif match.ends_at_half_time:
            yield voice.say("the sides change ends at half-time")
        if match.ends_after_each_round:
            yield voice.say("the sides change ends after each round")
