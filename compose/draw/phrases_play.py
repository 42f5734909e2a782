"""How to play, in another language than English."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from compose.draw.phrases import Phrases
from grammar.sentences import play
from grammar.sentences.base import Node, Np


def play_in(phrases: Phrases) -> Iterator[str]:
    """The rules of play that hold."""
    for line in phrases.game.sentences("play"):
        if not isinstance(line, play.SucceedAsOften | play.TakeAsLong):
            yield phrases.sentence(play_said(phrases, line))


def play_said(phrases: Phrases, line: Node) -> str:
    """A sentence of the play."""
    say = phrases.say
    match line:
        case play.Attempt():
            return _attempt(phrases, line)
        case play.Stay():
            where = phrases.place(line.preposition, line.where)
            return say("{who} stay {where}", who=phrases.np(line.who), where=where)
        case play.HoldLimit():
            time = phrases.amount(line.limit)
            return say("{ball} is held for at most {time}", ball=phrases.np(line.ball), time=time)
        case play.Rest():
            what = Np(line.determiner, None, None, line.ball)
            female = phrases.feminine(what)
            state = say(f"{line.state} (a ball)", female) if line.state else ""
            ball = f"{phrases.np(what)} {state}".rstrip()
            return say("{ball} rests {where}", ball=ball, where=resting(phrases, line.place, female))
        case play.Fetch():
            pattern = "{who} fetch {what} {where}" if phrases.plural(line.who) else "{who} fetches {what} {where}"
            fields = {"who": phrases.np(line.who), "what": phrases.np(line.what)}
            where = phrases.place(line.preposition, line.where)
            return say(pattern, where=where, **fields) + _paced(phrases, line.pace)
        case play.NobodyFetches():
            where = phrases.place(line.preposition, line.where)
            return say("nobody fetches {what} {where}", what=phrases.np(line.what), where=where)
        case play.Free() | play.StandUp():
            return _helped(phrases, line)
        case play.GuardLimit():
            who = phrases.counted(line.most.value, line.who.name)
            pattern = "at most {who} guards {what}" if line.most.value < 2 else "at most {who} guard {what}"
            return say(pattern, who=who, what=phrases.np(line.what))
        case play.ComesBack():
            fields = {"where": phrases.np(line.where), "time": phrases.amount(line.time)}
            return say("whoever waits in {where} comes back after {time}", **fields)
        case play.SaidRule():
            return phrases.wording.author(line.text)
    return line.words()


def _helped(phrases: Phrases, line: play.Free | play.StandUp) -> str:
    many = phrases.plural(line.who)
    if isinstance(line, play.Free):
        pattern = "{who} free {what}" if many else "{who} frees {what}"
        what = phrases.who(line.queued)
    else:
        pattern = "{who} stand up {what}" if many else "{who} stands up {what}"
        what = phrases.np(line.what)
    return phrases.say(pattern, who=phrases.np(line.who), what=what) + _paced(phrases, line.pace)


def _paced(phrases: Phrases, pace: play.Pace | None) -> str:
    if pace is None:
        return ""
    times = phrases.wording.counted(pace.times.value, "time", "times")
    return f" {phrases.say('{times} a minute', times=times)}"


def _attempt(phrases: Phrases, line: play.Attempt) -> str:
    ball = phrases.np(line.ball) if line.ball else ""
    doing = phrases.wording.listed((phrases.say(f"{skill} {{ball}}", ball=ball) for skill in line.skills), "or")
    aims = _aim(phrases, line.aims[0])
    for before, aim in pairwise(line.aims):
        both = isinstance(before, play.AimAt) and isinstance(aim, play.AimAt)
        said = phrases.np(aim.what) if both and isinstance(aim, play.AimAt) else _aim(phrases, aim)
        aims += f" {phrases.say('or')} {said}"
    details = ""
    for detail in line.details:
        if isinstance(detail, play.FromWhere):
            details += phrases.say(", from {distance} away", distance=phrases.amount(detail.distance))
        elif isinstance(detail, play.OnlyWhen):
            details += phrases.say(", but only when {condition}", condition=phrases.condition(detail.condition))
    return f"{phrases.np(line.who)} {doing} {aims}{details}"


def _aim(phrases: Phrases, aim: play.Aim) -> str:
    say = phrases.say
    match aim:
        case play.AimAt():
            order = f", {say(aim.standing_or_not)}" if aim.standing_or_not else ""
            return say("at {what}", what=phrases.np(aim.what)) + order
        case play.AimThrough():
            return say("through {what}", what=phrases.np(aim.what))
        case play.AimPast():
            return say("past {what}", what=phrases.np(aim.what))
        case play.AimTo():
            where = f" {phrases.place(aim.preposition, aim.where)}" if aim.where else ""
            return say("to {what}", what=phrases.np(aim.what)) + where
        case play.AimBetween():
            if aim.start.words() == aim.goal.words():
                one, female = phrases.noun(aim.start.name, False)
                return say("from one {what} to the other", female, what=one)
            return say("from {start} to {goal}", start=phrases.np(aim.start), goal=phrases.np(aim.goal))


def resting(phrases: Phrases, place: play.RestingPlace, female: bool) -> str:
    """Where a ball comes to rest, or somebody goes; `female` is the gender of who or what that is."""
    match place:
        case play.RestInHalf():
            return phrases.say(f"in the {place.which}", female)
        case play.RestToHalf():
            return phrases.say(f"to the {place.which}", female)
        case play.RestThere():
            return phrases.place(place.preposition, place.where)
        case play.RestOnStep():
            step = place.step.words()
            return phrases.say("to step {step} of {track}", step=step, track=phrases.np(place.where))
        case play.RestTo():
            return phrases.say("into {what}", what=phrases.np(place.where))
