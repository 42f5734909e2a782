"""Where somebody may block what is aimed at: an option while they are in play, and one while they are not."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.builder import Builder, at_least, none_in
from compose.net.lower.shares import Option
from compose.net.lower.tokens import how_many, in_play
from compose.net.outcome import Moment
from grammar.core.stopping import Blocking
from grammar.core.values import Population


def blocking_of(builder: Builder, moment: Moment) -> tuple[Blocking, ...]:
    """Who blocks what is aimed at; nobody blocks the balls of their own side."""
    if moment.ball is None:
        return ()
    return tuple(each for each in builder.play.blocking if each.thing == moment.thing and _against(each, moment))


def _against(blocking: Blocking, moment: Moment) -> frozenset[Population]:
    return frozenset(who for who in blocking.who if who.side != moment.by.side)


def blocked_or_not(builder: Builder, option: Option) -> Iterator[Option]:
    """The option with so many before each thing as long as one of them is in play, and without them."""
    found = blocking_of(builder, option.moment)
    if not found:
        yield option
        return
    who = frozenset(each for blocking in found for each in _against(blocking, option.moment))
    places = in_play(builder, *(each for each in builder.play.populations() if each in who))
    blocked = evolve(
        option.attempt,
        blockers=sum(_at_each(builder, blocking, option.moment) for blocking in found),
        block_with=found[0].means.value,
    )
    yield evolve(option, attempt=blocked, guard=(*option.guard, at_least(places)))
    yield evolve(option, guard=(*option.guard, none_in(places)))


def _at_each(builder: Builder, blocking: Blocking, moment: Moment) -> float:
    """How many stand at each thing: as the sheet says, else all of them spread over all that there are."""
    if blocking.each is not None:
        return float(blocking.each)
    who = in_play(builder, *_against(blocking, moment))
    there = max(1, sum(builder.places[place].start for place in who))  # whoever comes to be one later
    return there / max(1, how_many(builder, blocking.thing.kind, blocking.thing.owner))
