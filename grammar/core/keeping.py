"""Who keeps what: things that some guard, or before which they stop balls, while others aim at them."""

from __future__ import annotations

from grammar.core.game import Play
from grammar.core.play import AtThing, Through
from grammar.core.values import Population, Thing


def kept_by(play: Play, who: Population) -> tuple[Thing, ...]:
    """The things that a population keeps from others; of what nobody else aims at there is nothing to keep."""
    guarded = [each.thing for each in play.guarding if who in each.who and each.most]
    stopped = [each.thing for each in play.blocking if who in each.who and each.each != 0]
    wanted = {
        attempt.aim.thing
        for offer, attempt in play.tries
        if offer.by.side != who.side and isinstance(attempt.aim, AtThing | Through)
    }
    return tuple(thing for thing in dict.fromkeys((*guarded, *stopped)) if thing in wanted)
