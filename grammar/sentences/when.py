"""Sentences of the section when: an event, and what follows from it."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.ball import HasBall, Intercepted, KeptBy
from grammar.sentences.base import AnySide, Name, Node, Np, Quantity, spoken
from grammar.sentences.blocking import Blocked
from grammar.sentences.finish import Claim, Condition, SideWins
from grammar.sentences.fouls import Fouls
from grammar.sentences.lives import LastLife, LosesLife, WinsLife
from grammar.sentences.play import AllQueued, Queued, RestingPlace
from grammar.sentences.runs import InARow
from grammar.sentences.time import OfClock, WhenSpan


@frozen
class Knocked(Node):
    """Such as "a lantern is knocked"."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is knocked")


@frozen
class Hit(Node):
    """Such as "a player is hit", "a player who carries a log is hit"."""

    who: Np
    linked: str | None = field(eq=False)
    load: Np | None
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "who carries" if self.load else None, self.load, "is hit")


@frozen
class HitHigh(Node):
    """Such as "a player is hit above the shoulder": no hit that counts, but perhaps a foul."""

    who: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "is hit above the shoulder")


@frozen
class Touched(Node):
    """Such as "a player is touched", "a player who carries a log is touched"."""

    who: Np
    linked: str | None = field(eq=False)
    load: Np | None
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "who carries" if self.load else None, self.load, "is touched")


@frozen
class Caught(Node):
    """Such as "a throw is caught"; with a place, a pass that arrives: "a pass is caught on the far bench"."""

    what: Np
    verb: str = field(eq=False)
    preposition: str | None = None
    where: Np | None = None

    def words(self) -> str:
        return spoken(self.what, "is caught", self.preposition, self.where)


@frozen
class Missed(Node):
    """Such as "a ball is missed": the attempt reached nothing."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is missed")


@frozen
class GoesThrough(Node):
    """Such as "a ball goes through a ring"."""

    what: Np
    verb: str = field(eq=False)
    through: Np

    def words(self) -> str:
        return spoken(self.what, "goes through", self.through)


@frozen
class Crosses(Node):
    """Such as "a ball crosses the back line"."""

    what: Np
    line: Np

    def words(self) -> str:
        return spoken(self.what, "crosses", self.line)


@frozen
class Leaves(Node):
    """Such as "a ball leaves the court"."""

    what: Np
    where: Np

    def words(self) -> str:
        return spoken(self.what, "leaves", self.where)


@frozen
class HeldLong(Node):
    """Such as "a ball is held longer than 10 s"."""

    what: Np
    verb: str = field(eq=False)
    limit: Quantity

    def words(self) -> str:
        return spoken(self.what, "is held longer than", self.limit)


@frozen
class EveryoneHolds(Node):
    """Such as "everyone holds a ball for 5 s"."""

    time: Quantity

    def words(self) -> str:
        return spoken("everyone holds a ball for", self.time)


@frozen
class Arrives(Node):
    """Such as "a carrier arrives": somebody reached where they were going."""

    who: Np

    def words(self) -> str:
        return spoken(self.who, "arrives")


@frozen
class Becomes(Node):
    """Such as "a side has no balls in its half": follows at once when it becomes true."""

    claim: Claim

    def words(self) -> str:
        return self.claim.words()


Deed = Knocked | Hit | Touched | Caught | Intercepted | Blocked | Missed | GoesThrough | Crosses | Leaves | Arrives
Event = Deed | HeldLong | EveryoneHolds | Becomes | OfClock | LastLife | InARow | Fouls

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
        if isinstance(self.place, KeptBy):
            return spoken(self.who, self.place)
        return spoken(self.who, agree(self.who, "goes", "go"), self.place)


@frozen
class Waits(Node):
    """Such as "that player waits in the queue"."""

    who: Who
    verb: str = field(eq=False)
    preposition: str
    where: Np

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "waits", "wait"), self.preposition, self.where)


@frozen
class Returns(Node):
    """Such as "the first in the catcher's queue returns"."""

    who: Who
    verb: str = field(eq=False)

    def words(self) -> str:
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
    """Such as "that player changes places with the first in the queue"."""

    who: Who
    verb: str = field(eq=False)
    other: Who

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "changes", "change"), "places with", self.other)


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
class SideLoses(Node):
    """Such as "the thrower's side loses": the round ends."""

    side: AnySide
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.side, "loses")


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
        several = several or (self.number is None and self.determiner in ("all", "each", "every"))
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
    """Such as "the log goes back": to where it was taken from."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "goes back")


Consequence = (
    ComesIn
    | TakenAway
    | LosesLife
    | WinsLife
    | StaysDown
    | StandsUp
    | TakenOver
    | Steps
    | MovesTo
    | HasBall
    | Waits
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
)


@frozen
class Afar(Node):
    """Such as "9 m away", or farther: from where somebody acted."""

    distance: Quantity

    def words(self) -> str:
        return spoken(self.distance, "away")


@frozen
class When(Node):
    """An event, an optional condition, and its consequences in order; `whence`: only of who acts from there, `bounced`:
    only of a ball that has touched the floor on its way."""

    event: Event
    condition: Condition | None
    consequences: tuple[Consequence, ...]
    span_of_time: WhenSpan | None = None
    whence: Np | Afar | None = None
    bounced: str | None = None

    def words(self) -> str:
        whence = spoken("from", self.whence) if self.whence else ""
        condition = spoken("while", self.condition) if self.condition else ""
        of_time = f"{self.span_of_time.words()}, " if self.span_of_time else ""
        follows = " and ".join(each.words() for each in self.consequences)
        return f"{of_time}{spoken(self.event, whence, self.bounced, condition)}: {follows}"
