"""Sentences of what players try: with what, at what, from where, and how often it comes off."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, Quantity, detail, listed, spoken
from grammar.sentences.claims import Condition
from grammar.sentences.runs import OnlyAfterRow
from grammar.sentences.time import TimeSpan


@frozen
class AimAt(Node):
    """Such as "at the lanterns of the other side", "at the lanterns standing or not", "at players who carry a log"."""

    what: Np
    standing_or_not: str | None = None
    load: Np | None = None

    def words(self) -> str:
        return spoken("at", self.what, "who carry" if self.load else None, self.load, self.standing_or_not)


@frozen
class AimThrough(Node):
    """Such as "through the ring of the other side"."""

    what: Np

    def words(self) -> str:
        return spoken("through", self.what)


@frozen
class AimInto(AimThrough):
    """Such as "into the box of the other side"."""

    def words(self) -> str:
        return spoken("into", self.what)


@frozen
class AimPast(Node):
    """Such as "past the back line of the other side"."""

    what: Np

    def words(self) -> str:
        return spoken("past", self.what)


@frozen
class AimTo(Node):
    """Such as "to a team-mate on the far bench"."""

    what: Np
    preposition: str | None = None
    where: Np | None = None

    def words(self) -> str:
        return spoken("to", self.what, self.preposition, self.where)


@frozen
class AimBetween(Node):
    """Such as "from wall to wall", or "from the start base to the far base and back"."""

    start: Np
    goal: Np
    back: str | None = None

    def words(self) -> str:
        return spoken("from", self.start, "to", self.goal, self.back)


Aim = AimAt | AimThrough | AimPast | AimTo | AimBetween


@frozen
class SucceedChance(Node):
    """Such as "3 in 5 succeed": the text's own chance instead of the norms'."""

    times: Quantity
    of: Quantity

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "succeed")


@frozen
class CaughtChance(Node):
    """Such as "1 in 10 are caught"."""

    times: Quantity
    of: Quantity

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "are caught")


@frozen
class BounceShare(Node):
    """Such as "1 in 4 bounce first": of the balls that come to what they are sent at, or are caught."""

    times: Quantity
    of: Quantity

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "bounce first")


@frozen
class Pace(Node):
    """Such as "6 times a minute": attempts of one player."""

    times: Quantity
    determiner: str = field(default="a", eq=False)

    def words(self) -> str:
        return spoken(self.times, "times a minute")


@frozen
class PartOf(Node):
    """Such as "1 in 4 of the attempts": how often players choose this rather than their other attempts."""

    times: Quantity
    of: Quantity
    determiner: str = field(default="the", eq=False)

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "of the attempts")


@frozen
class OnlyWhen(Node):
    """Such as "only when the other side has no posts standing"."""

    condition: Condition

    def words(self) -> str:
        return spoken("only when", self.condition)


@frozen
class OnlyIn(Node):
    """Such as "only after 2 min", "only in the last minute"."""

    span_of_time: TimeSpan

    def words(self) -> str:
        return spoken("only", self.span_of_time)


@frozen
class FromWhere(Node):
    """Such as "from 6 m away"."""

    distance: Quantity

    def words(self) -> str:
        return spoken("from", self.distance, "away")


@frozen
class Stray(Node):
    """Such as "1 in 20 of the misses hit the cairn of the other side"."""

    times: Quantity
    of: Quantity
    what: Np

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "of the misses hit", self.what)


@frozen
class AtATime(Node):
    """Such as "only 1 player at a time": the next of a side goes when the one before is back."""

    number: Quantity
    who: Np

    def words(self) -> str:
        return spoken("only", self.number, self.who, "at a time")


Figure = SucceedChance | CaughtChance | BounceShare | Pace | PartOf | Stray
Detail = Figure | AtATime | OnlyWhen | OnlyIn | OnlyAfterRow | FromWhere


@frozen
class Attempt(Node):
    """Such as "players overarm throw a foam ball at the lanterns or the players of the other side".

    `where`: it is for those who wait there, not for those in play.
    """

    who: Np
    skills: tuple[str, ...]
    ball: Np | None
    aims: tuple[Aim, ...]
    details: tuple[Detail, ...] = ()
    preposition: str | None = None
    where: Np | None = None

    def words(self) -> str:
        aims = self.aims[0].words()
        for before, aim in zip(self.aims, self.aims[1:], strict=False):
            alike = type(before) is type(aim) and isinstance(aim, AimAt | AimThrough | AimPast)
            aims += " or " + (aim.words().partition(" ")[2] if alike else aim.words())
        doing = spoken(self.who, self.preposition, self.where, listed(self.skills, "or"), self.ball, aims)
        return doing + "".join(detail(part) for part in self.details)

    def told(self, kind: type[Node]) -> Node | None:
        """The detail of that kind, where the sentence gives one."""
        return next((part for part in self.details if isinstance(part, kind)), None)
