"""What a sheet declares: the court and its areas, sides and roles, the kit, and where everything starts."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from grammar.core.area_kind import AreaKind
from grammar.core.play import Lines
from grammar.core.values import (
    AreaId,
    CatalogueId,
    KindId,
    OnStep,
    Owner,
    Population,
    RoleId,
    SideId,
    Sort,
    Spot,
    Spread,
    Thing,
    TrackId,
    Upon,
)
from grammar.frozen import field, frozen
from grammar.sentences import base


class Cut(Enum):
    """How a court is divided among the sides."""

    WHOLE = "in one piece"
    PARTS = "in parts"


@frozen
class Court:
    """Length runs from back line to back line. `halved`: so the line says, however many sides there are."""

    length_m: Fraction
    width_m: Fraction
    cut: Cut
    lines: Lines = field(eq=False, default=())
    halved: bool = field(eq=False, default=False)


STOOD_ON = frozenset(AreaKind(word) for word in base.STOOD_ON)


class Doing(Enum):
    """What nobody does in an area."""

    ENTER = "enters"
    ACT = "acts"
    GUARD = "guards"
    TOUCH = "is touched"
    HIT = "is hit"


@frozen
class Room:
    """At most so many of these players find room; with 0 of them it is shut to them."""

    who: frozenset[Population]
    most: int


@frozen
class Area:
    """An area of one owner and where it lies; nobody is safe there for longer than `stay_s`. `only` these may enter it:
    there is no room for others. It lies in so many `places`: in each corner or along each side line, if it is for all,
    or spread over the court or a half."""

    id: AreaId
    owner: Owner
    kind: AreaKind
    lies: Spot
    depth_m: Fraction | None
    shut: frozenset[Doing]
    room: tuple[Room, ...]
    lines: Lines = field(eq=False)
    stay_s: Fraction | None = None
    only: frozenset[Population] | None = None
    places: int = 1

    def keeps_out(self, who: Population) -> bool:
        """Whether it is shut to a population."""
        return any(room.most == 0 and who in room.who for room in self.room)


@frozen
class Track:
    """Step 0 is the home of the first side, the last step that of the second."""

    id: TrackId
    homes: tuple[SideId, SideId]
    steps: int
    lines: Lines = field(eq=False)


@frozen
class Side:
    """How many players a side has; `solo`: each of them plays for themselves."""

    id: SideId
    least: int
    most: int
    solo: bool
    lines: Lines = field(eq=False)


@frozen
class Role:
    """Players of a side with a task, a distance or a ball of their own."""

    id: RoleId
    side: SideId
    least: int
    most: int
    aims_from_m: Fraction | None
    uses: KindId | None
    aimed_at: bool
    lines: Lines = field(eq=False)


class Odd(Enum):
    """What becomes of a pupil too many."""

    JOINS_FIRST = "joins the first side"
    KEEPS_SCORE = "keeps the score"
    HELPS = "is the teacher's helper"
    CHANGES = "changes in each round"
    UNSAID = "unsaid"


@frozen
class Organisation:
    """Up to so many courts side by side, and the odd pupil."""

    courts_most: int
    odd: Odd
    lines: Lines = field(eq=False, default=())


@frozen
class Kind:
    """What a kind of thing is like: `scale` 3/2 is half as big again; one of several parts falls part by part; what is
    `fixed` never falls by itself."""

    id: KindId
    sort: Sort
    like: CatalogueId
    scale: Fraction
    parts: int
    lines: Lines = field(eq=False)
    fixed: bool = False


class Per(Enum):
    """For what a count holds."""

    OWNER = "each owner"
    PLAYER = "each player of the owner"


@frozen
class Supply:
    """How many of a thing there are."""

    thing: Thing
    count: int
    per: Per
    lines: Lines = field(eq=False)


class All(Enum):
    """As many as there are left."""

    ALL = "all that are left"


ALL = All.ALL


@frozen
class AllBut:
    """All except so many."""

    count: int


@frozen
class Start:
    """Where tokens are at the set-up. What lies in the middle may do so in a row, on the middle line; `down`: targets
    that lie there."""

    what: Thing | Population
    count: int | All | AllBut
    at: Spot | OnStep | Upon
    spread: Spread | None
    lines: Lines = field(eq=False)
    on_middle_line: bool = False
    down: bool = False
