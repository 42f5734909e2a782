"""What follows then: the second half of a sentence of the section when."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.ball import KeptBy
from grammar.sentences.base import FROZEN, AnySide, Name, Node, Np, Quantity, spoken
from grammar.sentences.determiners import ALL
from grammar.sentences.queues import AllQueued, Queued
from grammar.sentences.resting import RestingPlace, RestInside

Who = Np | Queued | AllQueued


def many(who: Who) -> bool:
    """Whether the verb that follows stands in the plural."""
    if isinstance(who, Queued):
        return who.number is not None and who.number.value != 1
    return isinstance(who, AllQueued) or (isinstance(who, Np) and who.determiner == "all")


def agree(who: Who, one: str, several: str) -> str:
    """The verb that goes with it: "waits", or "wait" for all."""
    return several if many(who) else one


@frozen
class StaysDown(Node):
    """The target that was hit stays down."""

    def words(self) -> str:
        return "it stays down"


@frozen
class StandsUp(Node):
    """The target that was hit is put up again at once."""

    def words(self) -> str:
        return "it stands up again"


@frozen
class TakenOver(Node):
    """Such as "it joins the thrower's side": the target changes its owner and stands."""

    verb: str = field(eq=False)
    side: AnySide

    def words(self) -> str:
        return spoken("it joins", self.side)


@frozen
class Steps(Node):
    """Such as "it moves 1 step towards the thrower"."""

    by: Quantity
    noun: str = field(eq=False)
    direction: str
    towards: Np

    def words(self) -> str:
        noun = "step" if self.by.value == 1 else "steps"
        return spoken("it moves", self.by, noun, self.direction, self.towards)


@frozen
class MovesTo(Node):
    """Such as "the thrower goes to the far bench", "the ball goes to the other half"."""

    who: Who
    verb: str = field(eq=False)
    place: RestingPlace

    def words(self) -> str:
        if isinstance(self.place, KeptBy | RestInside):
            return spoken(self.who, self.place)
        return spoken(self.who, agree(self.who, "goes", "go"), self.place)


@frozen
class Waits(Node):
    """Such as "that player waits in the queue", "… until the next point", "… for 30 s"."""

    who: Who
    verb: str = field(eq=False)
    preposition: str
    where: Np
    until: str | Quantity | None = None

    def words(self) -> str:
        how_long = ("for", self.until) if isinstance(self.until, Quantity) else (self.until,)
        return spoken(self.who, agree(self.who, "waits", "wait"), self.preposition, self.where, *how_long)


@frozen
class Returns(Node):
    """Such as "the first in the catcher's queue returns", "a frozen player is free"."""

    who: Who
    verb: str = field(eq=False)

    def words(self) -> str:
        named = isinstance(self.who, Np) and self.who.name.text.startswith(FROZEN)
        if named or self.verb.endswith("free"):
            return spoken(self.who, agree(self.who, "is", "are"), "free")
        return spoken(self.who, agree(self.who, "returns", "return"))


@frozen
class Out(Node):
    """Such as "that player is out": for the rest of the round."""

    who: Who
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "is", "are"), "out")


@frozen
class Joins(Node):
    """Such as "that player joins the other side", "the passer joins the far bench"."""

    who: Who
    verb: str = field(eq=False)
    what: Np | AnySide

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "joins", "join"), self.what)


@frozen
class TurnsInto(Node):
    """Such as "that carrier becomes a guard"."""

    who: Who
    verb: str = field(eq=False)
    role: Np

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "becomes", "become"), self.role)


@frozen
class ChangesPlaces(Node):
    """Such as "that player changes places with the first in the queue", "2 players change places with the first 2"."""

    number: Quantity | None
    who: Who
    verb: str = field(eq=False)
    other: Who

    def words(self) -> str:
        change = "change" if self.number else agree(self.who, "changes", "change")
        return spoken(self.number, self.who, change, "places with", self.other)


@frozen
class Scores(Node):
    """Such as "the thrower's side scores 2 points", "the other side loses 1 point"."""

    side: AnySide
    verb: str
    points: Quantity
    noun: str = field(eq=False)

    def words(self) -> str:
        noun = "point" if self.points.value == 1 else "points"
        return spoken(self.side, self.verb, self.points, noun)


@frozen
class StartsAgain(Node):
    """Players, balls and targets go back to the set-up; points stay."""

    def words(self) -> str:
        return "everything starts again"


@frozen
class PlaysOn(Node):
    """Nothing follows."""

    def words(self) -> str:
        return "play goes on"


@frozen
class ComesIn(Node):
    """Such as "a foam ball comes in", "another 2 foam balls come in": until then the teacher has them."""

    more: str | None = field(eq=False)
    determiner: str | None
    number: Quantity | None
    name: Name
    verb: str = field(eq=False)

    def words(self) -> str:
        several = self.number is not None and self.number.value != 1
        several = several or (self.number is None and self.determiner in ALL)
        number = self.number if self.number is not None or self.determiner or self.more else Quantity(1.0)
        return spoken(self.more, self.determiner, number, self.name, "come in" if several else "comes in")


@frozen
class TakenAway(Node):
    """Such as "all foam balls are taken away": the teacher has them."""

    who: Who
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "is", "are"), "taken away")


@frozen
class Drops(Node):
    """Such as "that player drops the log": it lies where they are."""

    who: Who
    verb: str = field(eq=False)
    what: Np

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "drops", "drop"), self.what)


@frozen
class GoesBack(Node):
    """Such as "the log goes back": to where it was taken from; or "the ball goes back to the crate"."""

    what: Np
    verb: str = field(eq=False)
    where: Np | None = field(default=None)

    def words(self) -> str:
        return spoken(self.what, "goes back", "to" if self.where is not None else None, self.where)
