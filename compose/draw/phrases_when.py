"""What happens when, in another language than English."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.phrases import Phrases
from compose.draw.phrases_play import resting
from grammar.sentences import finish, when
from grammar.sentences.base import Np


def when_in(phrases: Phrases) -> Iterator[str]:
    """What follows from what."""
    for line in phrases.game.whens:
        yield phrases.sentence(when_said(phrases, line))


def when_said(phrases: Phrases, line: when.When) -> str:
    """An event and what follows."""
    moves = any(isinstance(one, when.Steps) for one in line.consequences)
    event = _event(phrases, line.event, moves)
    if line.condition:
        condition = phrases.condition(line.condition, (phrases.say("its side"), False))
        event += f" {phrases.say('while {condition}', condition=condition)}"
    its, named = _spoken_of(phrases, line.event)
    # Further on "it" could be anything spoken of since: the thing that was knocked gets its name again.
    follows = [
        _follows(phrases, one, named if order and isinstance(line.event, when.Knocked) else its, line.event)
        for order, one in enumerate(line.consequences)
    ]
    return phrases.say("when {event}, {follows}", event=event, follows=phrases.wording.listed(follows))


def _spoken_of(phrases: Phrases, event: when.Event) -> tuple[str, str]:
    """What the thing of an event is called after it was named: by "it", and by its name."""
    what = getattr(event, "what", None)
    if not isinstance(what, Np):
        return phrases.say("it (a thing)"), phrases.say("it (a thing)")
    it = phrases.say("it (a thing)", phrases.feminine(what))
    return it, phrases.np(Np("the", None, None, what.name))


def _event(phrases: Phrases, event: when.Event, moves: bool) -> str:
    """The clause after "when"; what `moves` when it is hit does not fall."""
    say, np = phrases.say, phrases.np
    match event:
        case when.Knocked():
            return say("{what} is hit and moves" if moves else "{what} is knocked", what=np(event.what))
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


def _follows(phrases: Phrases, one: when.Consequence, it: str, event: when.Event) -> str:
    """A consequence; `it` is the thing of the event."""
    say, female = phrases.say, isinstance(event, when.Knocked) and phrases.feminine(event.what)
    match one:
        case when.StaysDown():
            return say("{it} stays down", it=it)
        case when.StandsUp():
            return say("{it} stands up again", female, it=it)
        case when.TakenOver():
            return say("{it} joins {side}", it=it, side=phrases.side(one.side))
        case when.Steps():
            steps = phrases.wording.counted(one.by.value, "step", "steps")
            towards = phrases.np(one.towards)
            if one.direction == "towards":
                return say("{it} moves {steps} towards {whom}", it=it, steps=steps, whom=towards)
            return say("{it} moves {steps} away from {whom}", it=it, steps=steps, whom=towards)
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
            return say(pattern, who=who, where=resting(phrases, one.place, phrases.feminine(one.who)))
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
