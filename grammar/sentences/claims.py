"""Conditions: what can be so at a moment of a round."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import AnySide, Name, Node, Np, Quantity, spoken
from grammar.sentences.runs import CountedRuns


@frozen
class NoneOf(Node):
    """Such as "no"."""

    def words(self) -> str:
        return "no"


@frozen
class Exactly(Node):
    """Such as "5"."""

    count: Quantity

    def words(self) -> str:
        return self.count.words()


@frozen
class AtLeast(Node):
    """Such as "at least 5"."""

    count: Quantity

    def words(self) -> str:
        return spoken("at least", self.count)


@frozen
class AtMost(Node):
    """Such as "at most 5"."""

    count: Quantity

    def words(self) -> str:
        return spoken("at most", self.count)


@frozen
class AllOf(Node):
    """Such as "all"."""

    determiner: str

    def words(self) -> str:
        return self.determiner


@frozen
class HalfOf(Node):
    """Such as "more than half of its"."""

    amount: str

    def words(self) -> str:
        return self.amount


@frozen
class AllBut(Node):
    """Such as "all but 2"."""

    all_but: str = field(eq=False)
    count: Quantity

    def words(self) -> str:
        return spoken("all but", self.count)


@frozen
class MoreOf(Node):
    """Such as "at least 3 more", than another side has."""

    count: Quantity | None
    more: str

    def words(self) -> str:
        return spoken("at least" if self.count is not None else None, self.count, self.more)


@frozen
class TimesAsMany(Node):
    """Such as "twice as many", as another side has."""

    times: str

    def words(self) -> str:
        return self.times


AmountOf = NoneOf | Exactly | AtLeast | AtMost | AllOf | HalfOf | AllBut | MoreOf | TimesAsMany


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
class Gone(Node):
    """Players who are out for the round."""

    def words(self) -> str:
        return "out"


@frozen
class Placed(Node):
    """Such as "on the far bench"."""

    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.preposition, self.where)


@frozen
class AtHome(Node):
    """On the side's own end of a track."""

    def words(self) -> str:
        return "at home"


State = AtHome | Standing | Down | Inside | Gone | Placed


@frozen
class Counted(Node):
    """Such as "lanterns standing"."""

    what: Name
    state: State | None = None

    def words(self) -> str:
        return spoken(self.what, self.state)


@frozen
class CountedPoints(Node):
    """Such as "points"."""

    points: str = field(default="points", eq=False)

    def words(self) -> str:
        return "points"


@frozen
class CountedLives(Node):
    """Such as "lives": all that the players of a side have left together."""

    lives: str = field(default="lives", eq=False)

    def words(self) -> str:
        return "lives"


CountedWhat = Counted | CountedPoints | CountedLives | CountedRuns
_OF_ONE = {CountedPoints: "point", CountedLives: "life"}


def _numbered(counted: CountedWhat, quantity: AmountOf) -> str:
    count = getattr(quantity, "count", None)
    one = isinstance(count, Quantity) and count.value == 1 and not count.parameter
    return _OF_ONE.get(type(counted), counted.words()) if one else counted.words()


@frozen
class Claim(Node):
    """Such as "the other side has no lanterns standing"."""

    side: AnySide
    verb: str = field(eq=False)
    quantity: AmountOf
    counted: CountedWhat
    than: AnySide | None = None

    def words(self) -> str:
        than = None if self.than is None else "as" if isinstance(self.quantity, TimesAsMany) else "than"
        return spoken(self.side, self.verb, self.quantity, _numbered(self.counted, self.quantity), than, self.than)


@frozen
class ThereAre(Claim):
    """Such as "there are no logs in the middle": of a place that all share, so that each side can say it."""

    def words(self) -> str:
        one = isinstance(self.quantity, AllOf) or getattr(getattr(self.quantity, "count", None), "value", 0) == 1
        return spoken("there is" if one else "there are", self.quantity, _numbered(self.counted, self.quantity))


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
