"""How to play and what happens when, in another language than English."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from compose.draw.phrases import Phrases
from compose.draw.phrases_finish import finish_said
from grammar.sentences import finish, play, when
from grammar.sentences.base import Node, Np
from grammar.sentences.head import Switch, Switched

ON_OFF = {True: "usually on", False: "usually off"}


def play_in(phrases: Phrases) -> Iterator[str]:
    """The rules of play that hold."""
    for line in phrases.game.sentences("play"):
        if not isinstance(line, play.SucceedAsOften | play.TakeAsLong):
            yield phrases.sentence(play_said(phrases, line))


def when_in(phrases: Phrases) -> Iterator[str]:
    """What follows from what."""
    for line in phrases.game.whens:
        yield phrases.sentence(when_said(phrases, line))


def choices_in(phrases: Phrases) -> Iterator[str]:
    """What each switch changes, and how it is usually set."""
    game = phrases.game
    for switch in game.all_of("head", Switch):
        told = [
            line.sentence.sentence
            for section in ("play", "when", "finish")
            for line in game.sheet.lines(section)
            if isinstance(line.sentence, Switched) and line.sentence.name.text == switch.name.text
        ]
        parts = " ".join(phrases.sentence(_any(phrases, line)) for line in told)
        lead = phrases.sentence(f"{switch.name.words()} ({phrases.say(ON_OFF[switch.on])})")[:-1]
        yield f"{lead}\u00a0: {parts}"


def _any(phrases: Phrases, line: Node) -> str:
    if isinstance(line, when.When):
        return when_said(phrases, line)
    return finish_said(phrases, line) if type(line).__module__ == finish.__name__ else play_said(phrases, line)


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
            state = say(f"{line.state} (a ball)") if line.state else ""
            ball = f"{phrases.np(Np(line.determiner, None, None, line.ball))} {state}".rstrip()
            return say("{ball} rests {where}", ball=ball, where=resting(phrases, line.place))
        case play.Fetch():
            fields = {"who": phrases.np(line.who), "what": phrases.np(line.what)}
            return say("{who} fetch {what} {where}", where=phrases.place(line.preposition, line.where), **fields)
        case play.NobodyFetches():
            where = phrases.place(line.preposition, line.where)
            return say("nobody fetches {what} {where}", what=phrases.np(line.what), where=where)
        case play.Free() | play.StandUp():
            return _helped(phrases, line)
        case play.GuardLimit():
            who = phrases.counted(line.most.value, line.who.name)
            return say("at most {who} guard {what}", who=who, what=phrases.np(line.what))
        case play.ComesBack():
            fields = {"where": phrases.np(line.where), "time": phrases.amount(line.time)}
            return say("whoever waits in {where} comes back after {time}", **fields)
        case play.SaidRule():
            return line.text
    return line.words()


def _helped(phrases: Phrases, line: play.Free | play.StandUp) -> str:
    many = phrases.plural(line.who)
    if isinstance(line, play.Free):
        pattern = "{who} free {what}" if many else "{who} frees {what}"
        what = phrases.who(line.queued)
    else:
        pattern = "{who} stand up {what}" if many else "{who} stands up {what}"
        what = phrases.np(line.what)
    paced = ""
    if line.pace:
        times = phrases.wording.counted(line.pace.times.value, "time", "times")
        paced = f" {phrases.say('{times} a minute', times=times)}"
    return phrases.say(pattern, who=phrases.np(line.who), what=what) + paced


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
                return say("from one {what} to the other", what=phrases.one(aim.start.name))
            return say("from {start} to {goal}", start=phrases.np(aim.start), goal=phrases.np(aim.goal))


def resting(phrases: Phrases, place: play.RestingPlace) -> str:
    """Where a ball comes to rest, or somebody goes."""
    match place:
        case play.RestInHalf():
            return phrases.say(f"in the {place.which}")
        case play.RestToHalf():
            return phrases.say(f"to the {place.which}")
        case play.RestThere():
            return phrases.place(place.preposition, place.where)
        case play.RestOnStep():
            step = place.step.words()
            return phrases.say("to step {step} of {track}", step=step, track=phrases.np(place.where))
        case play.RestTo():
            return phrases.say("to {what}", what=phrases.np(place.where))


def when_said(phrases: Phrases, line: when.When) -> str:
    """An event and what follows."""
    event = _event(phrases, line.event)
    if line.condition:
        event += f" {phrases.say('while {condition}', condition=phrases.condition(line.condition))}"
    follows = phrases.wording.listed(_follows(phrases, one) for one in line.consequences)
    return phrases.say("when {event}, {follows}", event=event, follows=follows)


def _event(phrases: Phrases, event: when.Event) -> str:
    say, np = phrases.say, phrases.np
    match event:
        case when.Knocked():
            return say("{what} is knocked", what=np(event.what))
        case when.Hit():
            return say("{who} is hit", who=np(event.who))
        case when.Caught():
            where = f" {phrases.place(event.preposition, event.where)}" if event.where else ""
            return say("{what} is caught", what=np(event.what)) + where
        case when.Missed():
            return say("{what} is missed", what=np(event.what))
        case when.GoesThrough():
            return say("{what} goes through {ring}", what=np(event.what), ring=np(event.through))
        case when.Crosses():
            return say("{what} crosses {line}", what=np(event.what), line=np(event.line))
        case when.Leaves():
            return say("{what} leaves {where}", what=np(event.what), where=np(event.where))
        case when.HeldLong():
            return say("{what} is held for longer than {time}", what=np(event.what), time=phrases.amount(event.limit))
        case when.EveryoneHolds():
            return say("everyone has held a ball for {time}", time=phrases.amount(event.time))
        case when.Arrives():
            return say("{who} arrives", who=np(event.who))
        case when.Becomes():
            return phrases.claim(event.claim)


def _follows(phrases: Phrases, one: when.Consequence) -> str:
    say = phrases.say
    match one:
        case when.StaysDown():
            return say("it stays down")
        case when.StandsUp():
            return say("it stands up again")
        case when.TakenOver():
            return say("it joins {side}", side=phrases.side(one.side))
        case when.Steps():
            steps = phrases.wording.counted(one.by.value, "step", "steps")
            towards = phrases.np(one.towards)
            if one.direction == "towards":
                return say("it moves {steps} towards {whom}", steps=steps, whom=towards)
            return say("it moves {steps} away from {whom}", steps=steps, whom=towards)
        case when.Scores():
            points = phrases.wording.counted(one.points.value, "point", "points")
            if one.verb == "loses":
                return phrases.does(one.side, "{side} loses {points}", "{side} lose {points}", points=points)
            return phrases.does(one.side, "{side} scores {points}", "{side} score {points}", points=points)
        case finish.SideWins():
            return phrases.does(one.side, "{side} wins", "{side} win")
        case when.SideLoses():
            return phrases.does(one.side, "{side} loses", "{side} lose")
        case when.StartsAgain():
            return say("everything starts again")
        case when.PlaysOn():
            return say("play goes on")
    return _moves_on(phrases, one)


def _moves_on(phrases: Phrases, one: when.Consequence) -> str:
    """What those who were hit, threw or caught do next, the verb in their number."""
    assert isinstance(
        one, when.MovesTo | when.Waits | when.Returns | when.Out | when.Joins | when.TurnsInto | when.ChangesPlaces
    )
    who, many, say = phrases.who(one.who), phrases.plural(one.who), phrases.say
    match one:
        case when.MovesTo():
            pattern = "{who} go {where}" if many else "{who} goes {where}"
            return say(pattern, who=who, where=resting(phrases, one.place))
        case when.Waits():
            pattern = "{who} wait {where}" if many else "{who} waits {where}"
            return say(pattern, who=who, where=phrases.place(one.preposition, one.where))
        case when.Returns():
            return say("{who} return to play" if many else "{who} returns to play", who=who)
        case when.Out():
            pattern = "{who} are out for the rest of the round" if many else "{who} is out for the rest of the round"
            return say(pattern, who=who)
        case when.Joins():
            what = phrases.np(one.what) if isinstance(one.what, Np) else phrases.side(one.what)
            return say("{who} join {what}" if many else "{who} joins {what}", who=who, what=what)
        case when.TurnsInto():
            role = phrases.one(one.role.name)
            return say("{who} become {role}" if many else "{who} becomes {role}", who=who, role=role)
        case when.ChangesPlaces():
            pattern = "{who} change places with {whom}" if many else "{who} changes places with {whom}"
            return say(pattern, who=who, whom=phrases.who(one.other))
