"""Sentences of the space: the court and the areas on it."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Name, Node, Np, Quantity, detail, one_of, spoken


@frozen
class Court(Node):
    """Such as "court 18 m by 9 m, halved across": length runs from back line to back line."""

    length: Quantity
    width: Quantity
    cut: str | None = None

    def words(self) -> str:
        return spoken("court", self.length, "by", self.width) + detail(self.cut)


@frozen
class NobodyThere(Node):
    """Such as "nobody guards there", "nobody enters there", "nobody acts there"."""

    nobody: str
    verb: str

    def words(self) -> str:
        return f"nobody {self.verb}"


@frozen
class AtMostThere(Node):
    """Such as "at most 2 players there"."""

    most: Quantity
    who: Np

    def words(self) -> str:
        return spoken("at most", self.most, self.who, "there")


@frozen
class NoneThere(Node):
    """Such as "no bakers there"."""

    who: Np

    def words(self) -> str:
        return f"no {self.who.words()} there"


@frozen
class OnlyThere(Node):
    """Such as "only goalkeepers enter there": all others stay out."""

    who: Np

    def words(self) -> str:
        return spoken("only", self.who, "there" if one_of(self.who) else "enter there")


@frozen
class StayLimit(Node):
    """Such as "at most 10 s there": how long somebody is safe."""

    time: Quantity

    def words(self) -> str:
        return f"at most {self.time.words()} there"


AreaRule = NobodyThere | AtMostThere | NoneThere | OnlyThere | StayLimit


@frozen
class Area(Node):
    """Such as "dim strip: 2 m deep, before each back line, nobody guards there": the last word says its kind; "island
    base: 2 m deep, in 4 places on the court" is spread over it."""

    name: Name
    depth: Quantity | None
    places: Quantity | None
    preposition: str
    spot: Np
    rules: tuple[AreaRule, ...] = field(default=(), metadata={"rest": True})

    def words(self) -> str:
        deep = f"{self.depth.words()} deep, " if self.depth else ""
        places = f"in {self.places.words()} places " if self.places else ""
        rules = "".join(f", {rule.words()}" for rule in self.rules)
        return f"{self.name.words()}: {deep}{places}{self.preposition} {self.spot.words()}{rules}"


@frozen
class Track(Node):
    """Such as "drift track: 8 steps, from north to south": step 0 is at the home of the first, 8 at the other's."""

    name: Name
    steps: Quantity
    noun: str = field(eq=False)
    start: Name
    goal: Name

    def words(self) -> str:
        return f"{self.name.words()}: {self.steps.words()} steps, from {self.start.words()} to {self.goal.words()}"
