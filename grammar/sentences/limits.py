"""What counts, what one may do with a ball in the hand, and how low one plays."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, Quantity, one_of, spoken


@frozen
class CountsAfterBounce(Node):
    """Such as "a ball counts only after a bounce"."""

    said: str = field(eq=False)

    def words(self) -> str:
        return "a ball counts only after a bounce"


BOUNCED = "after a bounce"


def _of(said: str) -> str:
    return "catch" if said.startswith(("a catch", "catches")) else "hit"


def _part(said: str) -> str:
    return next(part for part in ("shoulder", "hip", "knee") if part in said)


def _by(said: str) -> tuple[str, ...]:
    return tuple(way for way in (BOUNCED, "off the wall") if way in said)


@frozen
class NotBounced(Node):
    """Such as "a catch after a bounce does not count", "a hit after a bounce or off the wall does not count"."""

    said: str = field(eq=lambda said: (_of(said), _by(said)))

    def words(self) -> str:
        return f"a {self.what} {' or '.join(self.ways)} does not count"

    @property
    def what(self) -> str:
        """The hit or the catch."""
        return _of(self.said)

    @property
    def ways(self) -> tuple[str, ...]:
        """By the floor, by the wall, or both."""
        return _by(self.said)


@frozen
class HitNotBounced(Node):
    """Such as "a player hit after a bounce does not count": of these alone, where NotBounced is of all that is hit."""

    what: Np
    said: str = field(eq=_by)

    def words(self) -> str:
        verb = "does not count" if one_of(self.what) else "do not count"
        return spoken(self.what, "hit", " or ".join(self.ways), verb)

    @property
    def ways(self) -> tuple[str, ...]:
        """By the floor, by the wall, or both."""
        return _by(self.said)


@frozen
class NotAbove(Node):
    """Such as "a hit above the hip does not count"."""

    said: str = field(eq=_part)

    def words(self) -> str:
        return f"a hit above the {self.part} does not count"

    @property
    def part(self) -> str:
        """The shoulder, the hip or the knee."""
        return _part(self.said)


@frozen
class NobodyRuns(Node):
    """Such as "nobody runs with the ball"."""

    ball: Np

    def words(self) -> str:
        return spoken("nobody runs with", self.ball)


@frozen
class StepLimit(Node):
    """Such as "at most 3 steps with the ball"."""

    most: Quantity
    noun: str = field(eq=False)
    ball: Np

    def words(self) -> str:
        return spoken("at most", self.most, "step" if self.most.value == 1 else "steps", "with", self.ball)


def _how(said: str) -> str:
    return said.split()[-1]


@frozen
class LowDown(Node):
    """Such as "players play seated", "keepers play kneeling"."""

    who: Np
    said: str = field(eq=_how)

    def words(self) -> str:
        return spoken(self.who, "plays" if one_of(self.who) else "play", self.how)

    @property
    def how(self) -> str:
        """Seated or kneeling."""
        return _how(self.said)
