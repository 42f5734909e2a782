"""Sentences of the finish, and the conditions that they and other sentences ask for."""

from __future__ import annotations

from attrs import field, frozen

from grammar.sentences.base import AnySide, Name, Node, Np, Quantity, SideRef, detail, spoken


@frozen
class NoneOf(Node):
    """ "no"."""

    def words(self) -> str:
        return "no"


@frozen
class Exactly(Node):
    """ "5"."""

    count: Quantity

    def words(self) -> str:
        return self.count.words()


@frozen
class AtLeast(Node):
    """ "at least 5"."""

    count: Quantity

    def words(self) -> str:
        return spoken("at least", self.count)


@frozen
class AtMost(Node):
    """ "at most 5"."""

    count: Quantity

    def words(self) -> str:
        return spoken("at most", self.count)


@frozen
class AllOf(Node):
    """ "all"."""

    determiner: str

    def words(self) -> str:
        return self.determiner


AmountOf = NoneOf | Exactly | AtLeast | AtMost | AllOf


@frozen
class Standing(Node):
    """Targets that stand."""

    def words(self) -> str:
        return "standing"


@frozen
class Down(Node):
    """Targets that are down."""

    def words(self) -> str:
        return "down"


@frozen
class Inside(Node):
    """Players in play."""

    preposition: str = "in"

    def words(self) -> str:
        return "in"


@frozen
class Waiting(Node):
    """Players in a queue."""

    def words(self) -> str:
        return "waiting"


@frozen
class Placed(Node):
    """ "on the far bench"."""

    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.preposition, self.where)


State = Standing | Down | Inside | Waiting | Placed


@frozen
class Counted(Node):
    """ "lanterns standing"."""

    what: Name
    state: State | None = None

    def words(self) -> str:
        return spoken(self.what, self.state)


@frozen
class CountedPoints(Node):
    """ "points"."""

    points: str = "points"

    def words(self) -> str:
        return self.points


@frozen
class Claim(Node):
    """ "the other side has no lanterns standing"."""

    side: AnySide
    quantity: AmountOf
    counted: Counted | CountedPoints

    def words(self) -> str:
        return spoken(self.side, "has", self.quantity, self.counted)


@frozen
class BothWays(Node):
    """Claims that must all hold."""

    claims: tuple[Claim, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return " and ".join(claim.words() for claim in self.claims)


@frozen
class AnyWay(Node):
    """Ways of which one is enough."""

    ways: tuple[BothWays, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return " or ".join(way.words() for way in self.ways)


Condition = AnyWay


@frozen
class WinWhen(Node):
    """ "a side wins when the other side has no lanterns standing"."""

    side: AnySide
    condition: Condition

    def words(self) -> str:
        return spoken(self.side, "wins when", self.condition)


@frozen
class LoseWhen(Node):
    """ "a side loses when it has no players in"."""

    side: AnySide
    loses: str
    condition: Condition

    def words(self) -> str:
        return spoken(self.side, "loses when", self.condition)


@frozen
class FirstTo(Node):
    """ "the first side to 10 points wins"."""

    points: Quantity
    noun: str = "points"

    def words(self) -> str:
        return spoken("the first side to", self.points, "point" if self.points.value == 1 else "points", "wins")


@frozen
class MoreWins(Node):
    """ "more lanterns standing wins", "fewer points wins"."""

    more: str
    counted: Counted | CountedPoints

    def words(self) -> str:
        return spoken(self.more, self.counted, "wins")


@frozen
class Draw(Node):
    """ "a draw"."""

    def words(self) -> str:
        return "a draw"


@frozen
class SideWins(Node):
    """ "the thrower's side wins": an effect, or a result."""

    side: AnySide = field(factory=lambda: SideRef("the", "other"))

    def words(self) -> str:
        return spoken(self.side, "wins")


Result = MoreWins | Draw | SideWins


@frozen
class After(Node):
    """ "after 6 min: more lanterns standing wins, else a draw"."""

    time: Quantity
    results: tuple[Result, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return f"after {self.time.words()}: " + ", else ".join(result.words() for result in self.results)


@frozen
class EndsWhen(Node):
    """ "the round ends when it has no balls, a draw"."""

    condition: Condition
    result: Result | None = None

    def words(self) -> str:
        return spoken("the round ends when", self.condition) + detail(self.result)


@frozen
class BothAtOnce(Node):
    """ "both at once: a draw": what counts where two sides win with one move."""

    result: Result

    def words(self) -> str:
        return f"both at once: {self.result.words()}"


@frozen
class OpenEnded(Node):
    """ "play goes on until the clock stops": an open end on purpose."""

    def words(self) -> str:
        return "play goes on until the clock stops"
