"""What players try, and what else goes on while they play."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from grammar.core.guards import Guard
from grammar.core.unfetched import Unfetched as Unfetched
from grammar.core.values import At as AtSpot
from grammar.core.values import KindId, Landmark, Population, Presence, Skill, Spot, Teacher, Thing
from grammar.frozen import field, frozen

Lines = tuple[int, ...]
Who = frozenset[Population] | Teacher


class Order(Enum):
    """Which of the things aimed at may be chosen."""

    ANY_STANDING = "any that stands"
    STANDING_OR_NOT = "standing or not"
    IN_ORDER = "in order"


@frozen
class AtThing:
    """At things of one kind and owner: targets, or bodies on a track."""

    thing: Thing
    order: Order = Order.ANY_STANDING


@frozen
class AtPlayers:
    """At players of one side, in play; `holding`: only at who has a ball of these kinds; `come_over`: in one's half."""

    of: frozenset[Population]
    holding: frozenset[KindId] = frozenset()
    come_over: bool = False


@frozen
class Through:
    """Through a ring, or into what is open and no ring."""

    thing: Thing
    into: bool = False


@frozen
class Past:
    """Past a line of a side."""

    line: Spot


@frozen
class ToMate:
    """To a team-mate who stands at one of these places (PLAYING: in play)."""

    of: frozenset[Population]
    at: frozenset[Presence | AtSpot]


@frozen
class Along:
    """From place to place (and `back`), with or without a load. `again`: what was brought may be taken once more."""

    start: Spot
    goal: Spot
    again: bool
    back: bool = False

    @property
    def from_hand(self) -> bool:
        """Whether somebody goes with the ball that their side has, from wherever they are."""
        return self.start.of is Landmark.HANDS


@frozen
class PickUp:
    """From where a thing is taken up, and where it is to be brought."""

    start: Spot
    goal: Spot


Aim = PickUp | AtThing | AtPlayers | Through | Past | ToMate | Along


@frozen
class Stray:
    """The share of misses that hit other things."""

    share: Fraction
    at: frozenset[Thing]


@frozen
class Figures:
    """What the text itself says of an attempt; None where it leaves it to the norms."""

    chance: Fraction | None = None
    caught: Fraction | None = None
    per_minute: Fraction | None = None
    from_m: Fraction | None = None
    stray: Stray | None = None
    bounced: Fraction | None = None


@frozen
class Attempt:
    """One thing to try: by which skill, with which ball or load, at what."""

    skill: Skill
    ball: KindId | None
    load: frozenset[Thing]
    aim: Aim


@frozen
class Offer:
    """What some may try by one line: a `share` of attempts, `at` where they wait, so many `at_once` (0: all)."""

    by: Population
    attempts: tuple[Attempt, ...] = field(eq=frozenset)
    only: Guard
    figures: Figures
    share: Fraction | None
    lines: Lines = field(eq=False)
    at: frozenset[Spot] = frozenset()
    at_once: int = 0


@frozen
class Home:
    """Where players stay while they play."""

    who: Population
    at: Spot
    lines: Lines = field(eq=False)


@frozen
class Fetch:
    """Balls are brought from a place; by players to where they have balls at hand, one `alone` at a time."""

    who: Who
    ball: KindId
    spot: Spot
    per_minute: Fraction | None
    lines: Lines = field(eq=False)
    granted: bool = field(default=False, eq=False)
    alone: bool = False


class Turn(Enum):
    """Who of those that wait comes first."""

    FIRST = "first"
    LAST = "last"
    ALL = "all"


@frozen
class Waiting:
    """Players who wait at one of these places, and who of them is meant."""

    who: frozenset[Population]
    at: frozenset[Spot]
    turn: Turn
    count: int = 1


@frozen
class Free:
    """Somebody brings back who waits; so many `together`."""

    who: Who
    waiting: Waiting
    per_minute: Fraction | None
    lines: Lines = field(eq=False)
    together: int = 1


@frozen
class ComeBack:
    """Each who waits comes back after a time, by themselves; all with the next point of any side where none is said."""

    who: frozenset[Population]
    at: frozenset[Spot]
    after_s: Fraction | None
    lines: Lines = field(eq=False)


@frozen
class StandUp:
    """Somebody puts up what has fallen."""

    who: Who
    thing: Thing
    per_minute: Fraction | None
    lines: Lines = field(eq=False)


@frozen
class Hold:
    """A ball of this kind is held no longer than so many seconds."""

    ball: KindId
    limit_s: Fraction
    lines: Lines = field(eq=False)


@frozen
class Guarding:
    """At most so many of these players may guard each thing."""

    who: frozenset[Population]
    thing: Thing
    most: int
    lines: Lines = field(eq=False)


@frozen
class PointsCount:
    """While a guard holds, all points that are won count so many times."""

    times: int
    guard: Guard
    lines: Lines = field(eq=False)


Service = Fetch | Free | ComeBack | StandUp
