"""Who is spoken of in what follows from a rule, and how sides are called there."""

from __future__ import annotations

from collections.abc import Sequence

from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.fouls import Fouled
from grammar.core.lives import LastLife
from grammar.core.rules import ON_A_PLAYER, Becomes, Happening, KeptFor, Result, Rule
from grammar.core.runs import InARow
from grammar.core.values import SideId, Thing
from grammar.frozen import frozen

OF_THE_DOER = "the side of whoever did so"


@frozen
class Moment:
    """A rule with who acted, who is concerned, and which things its event is about."""

    voice: Voice
    rule: Rule
    actor: SideId | None
    concerned: SideId | None
    things: frozenset[Thing]


def moment_of(voice: Voice, rule: Rule) -> Moment:
    """Who is spoken of in what follows."""
    trigger = rule.trigger
    match trigger:
        case Happening():
            side = next(iter(trigger.by)).side
            concerned = voice.ordered(trigger.against)
            others = voice.play.others(side)
            one = concerned[0] if len(concerned) == 1 else (others[0] if len(others) == 1 else None)
            speaking = voice.about(side, Subject.PLAYER)
            return Moment(speaking, rule, side, one, frozenset(to for to in trigger.to if isinstance(to, Thing)))
        case Fouled():
            side, against = next(iter(trigger.who)).side, sorted(trigger.against)
            one = against[0] if len(against) == 1 else None
            return Moment(voice.about(side, Subject.PLAYER), rule, side, one, frozenset())
        case KeptFor():
            side = next(iter(trigger.who)).side
            return Moment(voice.about(side, Subject.PLAYER), rule, side, None, frozenset())
        case InARow():
            others = voice.play.others(trigger.side)
            other = others[0] if len(others) == 1 else None
            return Moment(voice.about(trigger.side, Subject.SIDE), rule, trigger.side, other, frozenset())
        case LastLife():
            side = next(iter(trigger.who)).side
            return Moment(voice.about(side, Subject.PLAYER), rule, None, side, frozenset())
        case Becomes() if voice.me is not None:
            return Moment(voice, rule, None, None, frozenset())
    return Moment(voice, rule, None, None, frozenset())


def of_the_doer(moment: Moment, sides: Sequence[SideId]) -> bool:
    """Whether these are the side of whoever acted, and "their side" could as well be that of the player hit."""
    trigger = moment.rule.trigger
    of_two = isinstance(trigger, Happening) and trigger.result in (*ON_A_PLAYER, Result.TOUCHED)
    return of_two and moment.voice.me is not None and list(sides) == [moment.actor]


def named(moment: Moment) -> Voice:
    """Sides as who does something: "their side" only where it holds for each and somebody acts."""
    return moment.voice if moment.voice.me is not None else plain(moment)


def plain(moment: Moment) -> Voice:
    """The voice where nobody has been spoken of as "their", but for sentences that hold for each side."""
    return moment.voice if moment.voice.me is not None else moment.voice.about(None, Subject.PLAYERS)
