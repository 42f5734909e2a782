"""Who of those that took part in an event waits somewhere, out of play."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.rules import Happening, Person
from grammar.core.values import Presence


def is_away(who: object, moment: Moment) -> bool:
    """Whether somebody who took part waits somewhere."""
    return (who is Person.MATE and mate_is_away(moment)) or (who is Person.ACTOR and _actor_is_away(moment))


def _actor_is_away(moment: Moment) -> bool:
    """Whether the line is only of who acts from a place outside."""
    return isinstance(moment.trigger, Happening) and bool(moment.trigger.whence)


def mate_is_away(moment: Moment) -> bool:
    """Whether the team-mate of a pass waits somewhere, so that there is a way back into play."""
    return (
        isinstance(moment.trigger, Happening) and Presence.PLAYING not in moment.trigger.at and bool(moment.trigger.at)
    )
