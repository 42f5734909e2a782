"""Sentences of the play: what players try, where they stay, where balls come to rest."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.ball import KeptBy, RestTo, RestToSide
from grammar.sentences.base import Name, Node, Np, Quantity, detail, listed, one_of, spoken
from grammar.sentences.finish import Condition
from grammar.sentences.time import TimeSpan


@frozen
class Stay(Node):
    """Such as "players stay in their half"."""

    who: Np
    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.who, "stay", self.preposition, self.where)


@frozen
class AimAt(Node):
    """Such as "at the lanterns of the other side", "at the lanterns standing or not"."""

    what: Np
    standing_or_not: str | None = None

    def words(self) -> str:
        return spoken("at", self.what, self.standing_or_not)


@frozen
class AimThrough(Node):
    """Such as "through the ring of the other side"."""

    what: Np

    def words(self) -> str:
        return spoken("through", self.what)


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
    """Such as "from wall to wall"."""

    start: Np
    goal: Np

    def words(self) -> str:
        return spoken("from", self.start, "to", self.goal)


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


Detail = AtATime | Stray | SucceedChance | CaughtChance | BounceShare | Pace | PartOf | OnlyWhen | OnlyIn | FromWhere


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
            same = isinstance(before, AimAt) and isinstance(aim, AimAt)
            aims += " or " + (aim.words().removeprefix("at ") if same else aim.words())
        doing = spoken(self.who, self.preposition, self.where, listed(self.skills, "or"), self.ball, aims)
        return doing + "".join(detail(part) for part in self.details)

    def told(self, kind: type[Node]) -> Node | None:
        """The detail of that kind, where the sentence gives one."""
        return next((part for part in self.details if isinstance(part, kind)), None)


@frozen
class Touch(Node):
    """Such as "taggers touch players of the other side": an attempt without a ball."""

    who: Np
    verb: str = field(eq=False)
    whom: Np
    linked: str | None = field(default=None, eq=False)
    load: Np | None = None
    preposition: str | None = None
    where: Np | None = None
    details: tuple[Detail, ...] = field(default=(), metadata={"rest": True})

    def words(self) -> str:
        verb = "touches" if one_of(self.who) else "touch"
        load = ("who carry", self.load) if self.load else ()
        said = spoken(self.who, verb, self.whom, *load, self.preposition, self.where)
        return said + "".join(detail(part) for part in self.details)


@frozen
class Idle(Node):
    """Such as "bakers do not act": players of a role who try nothing of what others try."""

    who: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "does not act" if one_of(self.who) else "do not act")


@frozen
class Rotate(Node):
    """Such as "keepers change every 60 s", "keepers change every point": others have the task then."""

    who: Np
    verb: str = field(eq=False)
    each: str
    every: Quantity | str

    def words_of_time(self) -> str:
        return self.every if isinstance(self.every, str) else self.every.words()

    def words(self) -> str:
        return spoken(self.who, "change", self.each, self.words_of_time())


@frozen
class Take(Node):
    """Such as "players take a log from the store of the other side to their store"."""

    who: Np
    number: Quantity | None
    what: Np
    start_part: str | None
    start: Np
    goal_part: str | None
    goal: Np
    once: str | None = field(default=None, eq=False)
    details: tuple[Detail, ...] = field(default=(), metadata={"rest": True})

    def words(self) -> str:
        verb = "takes" if one_of(self.who) else "take"
        way = ("from", self.start_part, self.start, "to", self.goal_part, self.goal)
        said = spoken(self.who, verb, self.number, self.what, *way)
        return said + "".join(detail(part) for part in self.details)


@frozen
class HoldLimit(Node):
    """Such as "a ball is held at most 10 s"."""

    ball: Np
    verb: str = field(eq=False)
    limit: Quantity

    def words(self) -> str:
        return spoken(self.ball, "is held at most", self.limit)


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


RestingPlace = RestInHalf | RestToHalf | RestThere | RestOnStep | RestTo | RestToSide | KeptBy


@frozen
class Rest(Node):
    """Such as "a missed ball rests in the half it was sent to", "a missed pass goes to the other side"."""

    determiner: str
    state: str | None
    ball: Name
    verb: str = field(eq=False)
    place: RestingPlace

    def words(self) -> str:
        verb = "" if isinstance(self.place, KeptBy) else "rests" if self.verb == "rests" else "goes"
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

    def words(self) -> str:
        return spoken(self.who, self.verb, self.what, "from", self.preposition, self.where) + detail(self.pace)


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


@frozen
class Queued(Node):
    """Such as "the first in the catcher's queue", "the last on the far bench"."""

    determiner: str = field(eq=False)
    end: str
    number: Quantity | None
    preposition: str = field(eq=False)
    where: Np

    def words(self) -> str:
        return spoken("the", self.end, self.number, self.preposition, self.where)


@frozen
class AllQueued(Node):
    """Such as "all in the thrower's queue", "all on the far bench"."""

    determiner: str
    preposition: str = field(eq=False)
    where: Np

    def words(self) -> str:
        return spoken(self.determiner, self.preposition, self.where)


@frozen
class Free(Node):
    """Such as "the teacher frees the first in each queue, 1 times a minute"; "2 players free …" do it together."""

    number: Quantity | None
    who: Np
    verb: str = field(eq=False)
    queued: Queued | AllQueued
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        return spoken(self.number, self.who, self.verb, self.queued) + detail(self.pace)


@frozen
class StandUp(Node):
    """Such as "the teacher stands up a lantern, 2 times a minute"."""

    who: Np
    what: Np
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        return spoken(self.who, "stands up", self.what) + detail(self.pace)


@frozen
class GuardLimit(Node):
    """Such as "at most 1 player may guard each target"."""

    most: Quantity
    who: Np
    what: Np

    def words(self) -> str:
        return spoken("at most", self.most, self.who, "may guard", self.what)


@frozen
class SaidRule(Node):
    """A rule in the author's own words: it stands on the card, the check does not read it."""

    text: str

    def words(self) -> str:
        return f'"{self.text}"'


@frozen
class ComesBack(Node):
    """Such as "whoever waits in the task queue comes back after 30 s": each by themselves, when done."""

    where: Np
    time: Quantity

    def words(self) -> str:
        return spoken("whoever waits in", self.where, "comes back after", self.time)


@frozen
class SucceedAsOften(Node):
    """Such as "attempts succeed 70 % as often": a weaker hand, a moving target."""

    percent: Quantity

    def words(self) -> str:
        return spoken("attempts succeed", self.percent, "as often")


@frozen
class TakeAsLong(Node):
    """Such as "attempts take 150 % as long": walking, seated play."""

    percent: Quantity

    def words(self) -> str:
        return spoken("attempts take", self.percent, "as long")


@frozen
class PointsCount(Node):
    """Such as "in the last minute, points count double"."""

    span_of_time: TimeSpan | None
    noun: str = field(eq=False)
    times: str

    def words(self) -> str:
        return (f"{self.span_of_time.words()}, " if self.span_of_time else "") + f"points {self.times}"
