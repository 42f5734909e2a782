"""Sentences of the finish."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import AnySide, Name, Node, Quantity, SideRef, detail, listed, spoken
from grammar.sentences.claims import Condition, CountedWhat


@frozen
class WinWhen(Node):
    """Such as "a side wins when the other side has no lanterns standing"."""

    side: AnySide
    condition: Condition

    def words(self) -> str:
        return spoken(self.side, "wins when", self.condition)


@frozen
class LoseWhen(Node):
    """Such as "a side loses when it has no players in"."""

    side: AnySide
    loses: str
    condition: Condition

    def words(self) -> str:
        return spoken(self.side, "loses when", self.condition)


@frozen
class FirstTo(Node):
    """Such as "the first side to 10 points wins"."""

    points: Quantity
    noun: str = field(default="points", eq=False)

    def words(self) -> str:
        return spoken("the first side to", self.points, "point" if self.points.value == 1 else "points", "wins")


@frozen
class MoreWins(Node):
    """Such as "more lanterns standing wins", "fewer points wins"."""

    more: str
    counted: CountedWhat

    def words(self) -> str:
        return spoken(self.more, self.counted, "wins")


@frozen
class BestWins(Node):
    """Such as "the player with the most points wins": where each plays for themselves; who is level shares it."""

    said: str = field(default="", eq=False)

    def words(self) -> str:
        return "the player with the most points wins"


@frozen
class LeftWin(Node):
    """Those who are in play then, where each plays for themselves."""

    said: str = field(default="those who are left win", eq=False)

    def words(self) -> str:
        return "those who are left win"


@frozen
class Draw(Node):
    """Such as "a draw"."""

    def words(self) -> str:
        return "a draw"


@frozen
class SideWins(Node):
    """Such as "the thrower's side wins": an effect, or a result."""

    side: AnySide = field(factory=lambda: SideRef("the", "other"))

    def words(self) -> str:
        return spoken(self.side, "wins")


@frozen
class SideLoses(Node):
    """Such as "the thrower's side loses": an effect, or a result; the round ends."""

    side: AnySide
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.side, "loses")


@frozen
class NobodyWins(Node):
    """Such as "nobody wins": the round is over."""

    def words(self) -> str:
        return "nobody wins"


@frozen
class NextPointWins(Node):
    """At a level score the round goes on until somebody leads."""

    def words(self) -> str:
        return "the next point wins"


@frozen
class NextKnockedWins(Node):
    """Such as "the next cone knocked wins": at a level score the round goes on until somebody knocks one."""

    what: Name

    def words(self) -> str:
        return spoken("the next", self.what, "knocked wins")


Result = MoreWins | BestWins | LeftWin | Draw | SideWins | SideLoses | NobodyWins | NextPointWins | NextKnockedWins


@frozen
class After(Node):
    """Such as "after 6 min: more lanterns standing wins, else a draw"."""

    time: Quantity
    results: tuple[Result, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return f"after {self.time.words()}: " + ", else ".join(result.words() for result in self.results)


@frozen
class EndsWhen(Node):
    """Such as "the round ends when it has no balls, a draw"."""

    condition: Condition
    result: Result | None = None

    def words(self) -> str:
        return spoken("the round ends when", self.condition) + detail(self.result)


@frozen
class BothAtOnce(Node):
    """Such as "both at once: a draw": what counts where two sides win with one move."""

    result: Result

    def words(self) -> str:
        return f"both at once: {self.result.words()}"


@frozen
class OpenEnded(Node):
    """Such as "play goes on until the clock stops": an open end on purpose."""

    def words(self) -> str:
        return "play goes on until the clock stops"


@frozen
class BestOf(Node):
    """Such as "best of 3 rounds"."""

    rounds: Quantity

    def words(self) -> str:
        return spoken("best of", self.rounds, "rounds")


@frozen
class Innings(Node):
    """Such as "4 innings, the sides change tasks", "2 innings of 3 min, the sides change tasks": after each of them."""

    number: Quantity
    length: Quantity | None
    change: str

    def words(self) -> str:
        time = f" of {self.length.words()}" if self.length is not None else ""
        return f"{self.number.words()} innings{time}, {self.change}"


@frozen
class RoundsPlayed(Node):
    """Such as "3 rounds are played, more points over all wins": all of them, whatever the first ones bring."""

    number: Quantity
    wins: str

    def words(self) -> str:
        return f"{self.number.words()} rounds are played, {self.wins}"


@frozen
class Places(Node):
    """Such as "the first side scores 4, the next 3, 2 and 1 points": what each place of a round is worth."""

    points: tuple[Quantity, ...]

    def words(self) -> str:
        first, *others = self.points
        return spoken("the first side scores", first.words() + ",", "the next", listed(tuple(others)), "points")


@frozen
class Rests(Node):
    """Such as "one side rests, the winner stays on, 6 rounds", "four sides on two courts, all meet all"."""

    who: str
    how: str
    rounds: Quantity | None = None

    def words(self) -> str:
        rounds = f", {self.rounds.words()} rounds" if self.rounds is not None else ""
        return f"{self.who}, {self.how}{rounds}"


@frozen
class Halves(Node):
    """Such as "two halves of 4 min, the sides change tasks"."""

    length: Quantity | None
    change: str | None

    def words(self) -> str:
        return (f"two halves of {self.length.words()}" if self.length else "two halves") + detail(self.change)


@frozen
class ChangeEnds(Node):
    """Such as "the sides change ends at half-time"."""

    change: str
    when: str

    def words(self) -> str:
        return spoken(self.change, self.when)
