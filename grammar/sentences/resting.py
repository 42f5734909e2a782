"""Sentences of where balls come to rest, and who fetches them."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.attempting import AtATime, Pace
from grammar.sentences.ball import KeptBy, RestTo, RestToSide
from grammar.sentences.base import Name, Node, Np, Quantity, detail, spoken


@frozen
class RestInHalf(Node):
    """Such as "in the half it was sent to"."""

    preposition: str
    determiner: str = field(eq=False)
    which: str

    def words(self) -> str:
        return spoken("in the", self.which)


@frozen
class RestToHalf(Node):
    """Such as "to the half it left"."""

    determiner: str = field(eq=False)
    which: str

    def words(self) -> str:
        return spoken("to the", self.which)


@frozen
class RestThere(Node):
    """Such as "behind the back line of the other side"."""

    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.preposition, self.where)


@frozen
class RestOnStep(Node):
    """Such as "to step 4 of the drift track"."""

    step: Quantity
    where: Np

    def words(self) -> str:
        return spoken("to step", self.step, "of", self.where)


@frozen
class RestBack(Node):
    """Such as "goes back", "goes back to the crate": to whoever sent it, or to a place of theirs."""

    verb: str = field(eq=False)
    where: Np | None

    def words(self) -> str:
        return spoken("goes back", "to" if self.where is not None else None, self.where)


@frozen
class RestInside(Node):
    """ "Stays there": in what it went into."""

    def words(self) -> str:
        return "stays there"


RestingPlace = RestInHalf | RestToHalf | RestThere | RestOnStep | RestTo | RestToSide | KeptBy | RestBack | RestInside


@frozen
class Rest(Node):
    """Such as "a missed ball rests in the half it was sent to", "a missed pass goes to the other side"."""

    determiner: str
    state: str | None
    ball: Name
    verb: str = field(eq=False)
    place: RestingPlace

    def words(self) -> str:
        verb = "" if isinstance(self.place, KeptBy | RestBack) else "rests" if self.verb == "rests" else "goes"
        return spoken(self.determiner, self.state, self.ball, verb, self.place)


@frozen
class Fetch(Node):
    """Such as "players fetch balls from behind their back line"."""

    who: Np
    verb: str = field(eq=False)
    what: Np
    preposition: str | None
    where: Np
    pace: Pace | None = field(default=None)
    in_turn: AtATime | None = field(default=None)

    def words(self) -> str:
        said = spoken(self.who, self.verb, self.what, "from", self.preposition, self.where)
        return said + detail(self.pace) + detail(self.in_turn)


@frozen
class NobodyFetches(Node):
    """Such as "nobody fetches balls from behind the back line"."""

    nobody: str
    verb: str = field(eq=False)
    what: Np
    preposition: str | None
    where: Np

    def words(self) -> str:
        return spoken("nobody fetches", self.what, "from", self.preposition, self.where)
