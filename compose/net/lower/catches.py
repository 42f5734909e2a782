"""Balls that are caught by the other side: by which side and role, how often each of several, who must be there."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.builder import Builder, at_least
from compose.net.lower.shares import Option
from compose.net.lower.tokens import in_play, side_in_play
from compose.net.net import Condition, Ratio
from compose.net.outcome import Moment, fires
from grammar.core.play import Past, ToMate
from grammar.core.rules import Happening, Result
from grammar.core.values import Presence


def caught(builder: Builder, option: Option) -> Iterator[Moment]:
    """By the side at which it was sent; a pass, or what is sent at one's own, by any other side."""
    moment = option.moment
    own = moment.concerned == moment.by.side and bool(builder.play.others(moment.by.side))
    catching = builder.play.others(moment.by.side) if own else (moment.concerned,)
    anywhere = own or isinstance(moment.aim, Past | ToMate)
    for side in catching:
        if side is not None:
            against = side if anywhere else moment.against
            one = evolve(without_mate(moment), result=Result.CAUGHT, concerned=side, against=against)
            yield from _by_each(builder, one)


def _by_each(builder: Builder, caught: Moment) -> Iterator[Moment]:
    """A catch by each role of a side, where a line is only of what some of them catch."""
    assert caught.concerned is not None
    if caught.person is None:
        by_each = [evolve(caught, person=each) for each in builder.play.populations(caught.concerned)]
        rules = [rule.trigger for rule in builder.play.rules if isinstance(rule.trigger, Happening) and rule.trigger.to]
        if any(fires(trigger, each) for trigger in rules for each in by_each):
            yield from by_each
            return
    yield caught


def share_of_catchers(builder: Builder, option: Option, moment: Moment) -> tuple[Ratio, ...]:
    """Where any of several sides, or of its roles, may catch, each does so by the number of its players in play."""
    others = builder.play.others(moment.by.side)
    if moment.result is not Result.CAUGHT or moment.concerned is None:
        return ()
    theirs, shares = side_in_play(builder, moment.concerned), []
    if option.moment.concerned == moment.by.side and len(others) > 1:
        shares.append(Ratio(theirs, side_in_play(builder, *others)))
    if moment.catcher is not None:
        shares.append(Ratio(in_play(builder, moment.catcher), theirs))
    return tuple(shares)


def somebody_catches(builder: Builder, moment: Moment) -> tuple[Condition, ...]:
    """Whoever catches must be there; nobody catches their own ball."""
    if moment.result is not Result.CAUGHT or moment.concerned is None:
        return ()
    here = builder.counted_as(moment.by, moment.by_at)
    alone = moment.concerned == moment.by.side and here is Presence.PLAYING
    if moment.catcher is not None:
        return (at_least(in_play(builder, moment.catcher), 2 if alone and moment.catcher == moment.by else 1),)
    return (at_least(side_in_play(builder, moment.concerned), 2 if alone else 1),)


def without_mate(moment: Moment) -> Moment:
    """A pass that does not arrive: no mate has the ball."""
    return evolve(moment, person=None, mate_at=None) if isinstance(moment.aim, ToMate) else moment
