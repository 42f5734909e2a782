"""Sentences of the play: where players stay, what else they do, and what limits it."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.attempting import Detail, Pace
from grammar.sentences.base import Node, Np, Quantity, detail, listed, one_of, place_word, spoken
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
class Tries(Node):
    """Such as "5 attempts": so many of those who have the task."""

    number: Quantity

    def words(self) -> str:
        return f"{self.number.words()} attempts"


@frozen
class Rotate(Node):
    """Such as "keepers change every 60 s", "keepers change every point": others have the task then."""

    who: Np
    verb: str = field(eq=False)
    each: str
    every: Quantity | Tries | str

    def words(self) -> str:
        return spoken(self.who, "changes" if one_of(self.who) else "change", self.each, _words_of_time(self.every))


@frozen
class Jobs(Node):
    """Such as "batters, fielders and fetchers": in the order in which pupils have them."""

    each: tuple[Np, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return listed(self.each, "and")


@frozen
class MoveOn(Node):
    """Such as "batters, fielders and fetchers move on every 60 s": each to the next task, the last to the first."""

    jobs: Jobs
    verb: str = field(eq=False)
    each: str
    every: Quantity | str

    @property
    def who(self) -> Np:
        """Those who move on first, for whom the line stands."""
        return self.jobs.each[0]

    def words(self) -> str:
        return spoken(self.jobs, "move on", self.each, _words_of_time(self.every))


@frozen
class AllMoveOn(Node):
    """Such as "all move on every 60 s": through all tasks, in the order of the sheet."""

    verb: str = field(eq=False)
    each: str
    every: Quantity | str

    def words(self) -> str:
        return spoken("all move on", self.each, _words_of_time(self.every))


def _words_of_time(every: Quantity | Tries | str) -> str:
    return every if isinstance(every, str) else every.words()


@frozen
class SeveralKinds(Node):
    """Such as "a carrot, an onion or a leek": one of them, whichever somebody comes upon."""

    kinds: tuple[Np, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return listed(self.kinds, "or")


@frozen
class Take(Node):
    """Such as "players take a log from the store of the other side to their store"."""

    who: Np
    number: Quantity | None
    what: Np | SeveralKinds
    start_part: str | None
    start: Np
    goal_part: str | None
    goal: Np
    once: str | None = field(default=None, eq=False)
    details: tuple[Detail, ...] = field(default=(), metadata={"rest": True})

    @property
    def phrases(self) -> tuple[Np, ...]:
        """What is taken, a phrase for each kind that it names."""
        return self.what.kinds if isinstance(self.what, SeveralKinds) else (self.what,)

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
class StandUp(Node):
    """Such as "the teacher stands up a lantern, 2 times a minute"."""

    who: Np
    verb: str = field(eq=False)
    what: Np
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        one = one_of(self.who) or self.who.name.text == "teacher"
        return spoken(self.who, "stands up" if one else "stand up", self.what) + detail(self.pace)


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
    """Such as "whoever waits in the task queue comes back after 30 s", "… on the bench …", "… after the next point"."""

    where: Np
    time: Quantity | str

    def words(self) -> str:
        return spoken("whoever waits", place_word(self.where), self.where, "comes back after", self.time)


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
