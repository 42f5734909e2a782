"""Sentences of the play: what players try, where they stay, where balls come to rest."""

from __future__ import annotations

from attrs import field, frozen

from grammar.sentences.base import Name, Node, Np, Quantity, detail, spoken
from grammar.sentences.finish import Condition


@frozen
class Stay(Node):
    """ "players stay in their half"."""

    who: Np
    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.who, "stay", self.preposition, self.where)


@frozen
class AimAt(Node):
    """ "at the lanterns of the other side", "at the lanterns standing or not"."""

    what: Np
    standing_or_not: str | None = None

    def words(self) -> str:
        return spoken("at", self.what, self.standing_or_not)


@frozen
class AimThrough(Node):
    """ "through the ring of the other side"."""

    what: Np

    def words(self) -> str:
        return spoken("through", self.what)


@frozen
class AimPast(Node):
    """ "past the back line of the other side"."""

    what: Np

    def words(self) -> str:
        return spoken("past", self.what)


@frozen
class AimTo(Node):
    """ "to a team-mate on the far bench"."""

    what: Np
    preposition: str | None = None
    where: Np | None = None

    def words(self) -> str:
        return spoken("to", self.what, self.preposition, self.where)


@frozen
class AimBetween(Node):
    """ "from wall to wall"."""

    start: Np
    goal: Np

    def words(self) -> str:
        return spoken("from", self.start, "to", self.goal)


Aim = AimAt | AimThrough | AimPast | AimTo | AimBetween


@frozen
class SucceedChance(Node):
    """ "3 in 5 succeed": the text's own chance instead of the norms'."""

    times: Quantity
    of: Quantity

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "succeed")


@frozen
class CaughtChance(Node):
    """ "1 in 10 are caught"."""

    times: Quantity
    of: Quantity

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "are caught")


@frozen
class Pace(Node):
    """ "6 times a minute": attempts of one player."""

    times: Quantity
    determiner: str = "a"

    def words(self) -> str:
        return spoken(self.times, "times a minute")


@frozen
class PartOf(Node):
    """ "1 in 4 of the attempts": how often players choose this rather than their other attempts."""

    times: Quantity
    of: Quantity
    determiner: str = "the"

    def words(self) -> str:
        return spoken(self.times, "in", self.of, "of the attempts")


@frozen
class OnlyWhen(Node):
    """ "only when the other side has no posts standing"."""

    condition: Condition

    def words(self) -> str:
        return spoken("only when", self.condition)


@frozen
class FromWhere(Node):
    """ "from 6 m away"."""

    distance: Quantity

    def words(self) -> str:
        return spoken("from", self.distance, "away")


Detail = SucceedChance | CaughtChance | Pace | PartOf | OnlyWhen | FromWhere


@frozen
class Attempt(Node):
    """ "players overarm throw a foam ball at the lanterns or the players of the other side"."""

    who: Np
    skill: str
    ball: Np | None
    aims: tuple[Aim, ...]
    details: tuple[Detail, ...] = ()

    def words(self) -> str:
        aims = self.aims[0].words()
        for before, aim in zip(self.aims, self.aims[1:], strict=False):
            same = isinstance(before, AimAt) and isinstance(aim, AimAt)
            aims += " or " + (aim.words().removeprefix("at ") if same else aim.words())
        return spoken(self.who, self.skill, self.ball, aims) + "".join(detail(part) for part in self.details)

    def told(self, kind: type[Node]) -> Node | None:
        """The detail of that kind, where the sentence gives one."""
        return next((part for part in self.details if isinstance(part, kind)), None)


@frozen
class HoldLimit(Node):
    """ "a ball is held at most 10 s"."""

    ball: Np
    verb: str
    limit: Quantity

    def words(self) -> str:
        return spoken(self.ball, "is held at most", self.limit)


@frozen
class RestInHalf(Node):
    """ "in the half it was sent to"."""

    preposition: str
    determiner: str
    which: str

    def words(self) -> str:
        return spoken("in the", self.which)


@frozen
class RestToHalf(Node):
    """ "to the half it left"."""

    determiner: str
    which: str

    def words(self) -> str:
        return spoken("to the", self.which)


@frozen
class RestThere(Node):
    """ "behind the back line of the other side"."""

    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.preposition, self.where)


@frozen
class RestTo(Node):
    """ "to the far bench"."""

    where: Np

    def words(self) -> str:
        return spoken("to", self.where)


RestingPlace = RestInHalf | RestToHalf | RestThere | RestTo


@frozen
class Rest(Node):
    """ "a missed ball rests in the half it was sent to"."""

    determiner: str
    state: str | None
    ball: Name
    verb: str
    place: RestingPlace

    def words(self) -> str:
        return spoken(self.determiner, self.state, self.ball, "rests", self.place)


@frozen
class Fetch(Node):
    """ "players fetch balls from behind their back line"."""

    who: Np
    verb: str
    what: Np
    preposition: str | None
    where: Np
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        return spoken(self.who, self.verb, self.what, "from", self.preposition, self.where) + detail(self.pace)


@frozen
class NobodyFetches(Node):
    """ "nobody fetches balls from behind the back line"."""

    nobody: str
    verb: str
    what: Np
    preposition: str | None
    where: Np

    def words(self) -> str:
        return spoken("nobody fetches", self.what, "from", self.preposition, self.where)


@frozen
class Queued(Node):
    """ "the first in the catcher's queue"."""

    determiner: str
    end: str
    preposition: str
    where: Np

    def words(self) -> str:
        return spoken("the", self.end, "in", self.where)


@frozen
class AllQueued(Node):
    """ "all in the thrower's queue"."""

    determiner: str
    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.determiner, "in", self.where)


@frozen
class Free(Node):
    """ "the teacher frees the first in each queue, 1 times a minute"."""

    who: Np
    queued: Queued | AllQueued
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        return spoken(self.who, "frees", self.queued) + detail(self.pace)
