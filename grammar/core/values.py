"""Who, what and where, as values: sides, players, things, places, and how something stands.

Ids are opaque: they are equal or not, and nothing is read from their letters. "Any" is written out as the
full set and "nobody" as the empty one.
"""

from __future__ import annotations

from enum import Enum

from grammar.core.skills import Skill as Skill
from grammar.frozen import frozen


@frozen(order=True)
class Id:
    """A name that is only compared."""

    key: str


@frozen(order=True)
class SideId(Id):
    """A seat with tasks, such as north."""


@frozen(order=True)
class RoleId(Id):
    """Some players of a side with a task of their own."""


@frozen(order=True)
class KindId(Id):
    """A line of the kit: tokens of one kind are alike."""


@frozen(order=True)
class CatalogueId(Id):
    """A thing of the library's kit."""


@frozen(order=True)
class AreaId(Id):
    """An area of the sheet."""


@frozen(order=True)
class TrackId(Id):
    """A track of steps."""


@frozen(order=True)
class SwitchId(Id):
    """A choice left to the class."""


class Shared(Enum):
    """The owner of what belongs to nobody, or to all."""

    SHARED = "shared"


class Plain(Enum):
    """The role of players without one."""

    PLAIN = "plain"


class Teacher(Enum):
    """The teacher, who is nobody's side."""

    TEACHER = "teacher"


SHARED, PLAIN, TEACHER = Shared.SHARED, Plain.PLAIN, Teacher.TEACHER
Owner = SideId | Shared


@frozen
class Laden:
    """The task of who carries one thing of a kind from a place to a place, and had this role when it was taken."""

    role: RoleId | Plain
    kind: KindId
    start: Spot
    goal: Spot


Part_of_a_side = RoleId | Plain | Laden


def without_load(role: Part_of_a_side) -> RoleId | Plain:
    """The role that somebody has who carries something or not."""
    return role.role if isinstance(role, Laden) else role


@frozen
class Population:
    """The players of a side with a role, or without one; those who carry something are counted apart."""

    side: SideId
    role: Part_of_a_side


@frozen
class Thing:
    """Things of one kind and owner."""

    kind: KindId
    owner: Owner


class Sort(Enum):
    """What a thing is for."""

    BALL = "ball"
    TARGET = "target"
    RING = "ring"
    BODY = "body"
    FURNITURE = "furniture"
    LOAD = "load"  # a thing that players take from place to place: it is whoever's place it lies in


class Landmark(Enum):
    """The places of every court. HANDS: a side has the ball, wherever on an undivided court its players are;
    FROZEN: wherever its players were when they froze; OTHER_END: where one back line is for all, the other one;
    INSIDE: within a thing of that owner into which it went."""

    HALF = "half"
    BACK_LINE = "back line"
    SIDE_LINE = "side line"
    MIDDLE_LINE = "middle line"
    MIDDLE = "middle"
    COURT = "court"
    WALL = "wall"
    CORNER = "corner"
    HANDS = "hands"
    FROZEN = "frozen"
    OTHER_END = "other back line"
    INSIDE = "inside"


OF_A_SIDE = frozenset(
    {
        Landmark.HALF,
        Landmark.HANDS,
        Landmark.FROZEN,
        Landmark.BACK_LINE,
        Landmark.SIDE_LINE,
        Landmark.WALL,
        Landmark.CORNER,
    }
)

ONE_OF_SEVERAL = frozenset({Landmark.BACK_LINE, Landmark.SIDE_LINE, Landmark.WALL, Landmark.CORNER})  # "a corner"


class Part(Enum):
    """How something lies to a place."""

    AT = "at"
    BEFORE = "before"
    BEHIND = "behind"
    BESIDE = "beside"
    ACROSS = "across"
    ALONG = "along"
    AROUND = "around"


@frozen
class Spot:
    """A place on the floor: a landmark or an area of one owner, and which part of it. Of a ball there: that those with
    one task alone have it, where a `role` is named."""

    of: Landmark | AreaId
    owner: Owner
    part: Part = Part.AT
    role: RoleId | None = None

    @property
    def is_frozen(self) -> bool:
        """Whether whoever is there froze where they were."""
        return self.of is Landmark.FROZEN


class Presence(Enum):
    """How a player takes part: in play, or out for the round."""

    PLAYING = "playing"
    OUT = "out"


class Posture(Enum):
    """How a target stands."""

    UP = "up"
    DOWN = "down"


@frozen
class At:
    """Being at a place: a player who waits, a ball that lies, a load that was brought."""

    spot: Spot


@frozen
class OnStep:
    """Standing on a step of a track; step 0 is the home of its first side."""

    track: TrackId
    step: int


@frozen
class Upon:
    """Lying on, before, behind or beside things of a kind."""

    kind: KindId
    part: Part


class Spread(Enum):
    """How several things stand."""

    EVENLY = "evenly spaced"
    RING = "in a ring"
    STAGGERED = "staggered"
    TRIANGLE = "in a triangle"
    CLOSE = "close together"


class Same(Enum):
    """Nothing of it changes."""

    SAME = "same"


SAME = Same.SAME
