"""Sentences of the section when: an event, and what follows from it."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.ball import HasBall
from grammar.sentences.base import Node, Np, Quantity, SideOf, SideRef, spoken
from grammar.sentences.claims import Condition
from grammar.sentences.events import Event
from grammar.sentences.finish import SideLoses, SideWins
from grammar.sentences.freezing import Freezes
from grammar.sentences.lives import LosesLife, WinsLife
from grammar.sentences.sets import StandAgain, StaysAsItIs
from grammar.sentences.then import (
    ChangesPlaces,
    ComesIn,
    Drops,
    GoesBack,
    Joins,
    MovesTo,
    Out,
    PlaysOn,
    Returns,
    Scores,
    StandsUp,
    StartsAgain,
    StaysDown,
    Steps,
    TakenAway,
    TakenOver,
    TurnsInto,
    Waits,
)
from grammar.sentences.time import WhenSpan

Consequence = (
    ComesIn
    | TakenAway
    | LosesLife
    | WinsLife
    | StaysDown
    | StandsUp
    | StaysAsItIs
    | TakenOver
    | Steps
    | MovesTo
    | HasBall
    | Waits
    | Freezes
    | Returns
    | Out
    | Joins
    | TurnsInto
    | ChangesPlaces
    | Scores
    | SideWins
    | SideLoses
    | StartsAgain
    | PlaysOn
    | Drops
    | GoesBack
    | StandAgain
)


@frozen
class Afar(Node):
    """Such as "9 m away", or farther: from where somebody acted."""

    distance: Quantity

    def words(self) -> str:
        return spoken(self.distance, "away")


@frozen
class OwnSide(Node):
    """Such as "its own side": that of the thing, or of the player, to whom it happens."""

    def words(self) -> str:
        return "its own side"


Doer = Np | SideRef | SideOf | OwnSide


@frozen
class When(Node):
    """An event, an optional condition, and its consequences in order; `doer`: only of what these do, `whence`: only of
    who acts from there, `bounced`: only of a ball that has touched the floor on its way."""

    event: Event
    condition: Condition | None
    consequences: tuple[Consequence, ...]
    span_of_time: WhenSpan | None = None
    whence: Np | Afar | None = None
    bounced: str | None = None
    doer: Doer | None = None

    def words(self) -> str:
        doer = spoken("by", self.doer) if self.doer else ""
        whence = spoken("from", self.whence) if self.whence else ""
        condition = spoken("while", self.condition) if self.condition else ""
        of_time = f"{self.span_of_time.words()}, " if self.span_of_time else ""
        follows = " and ".join(each.words() for each in self.consequences)
        return f"{of_time}{spoken(self.event, doer, whence, self.bounced, condition)}: {follows}"
