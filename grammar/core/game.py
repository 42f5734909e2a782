"""The resolved game: all that a sheet says, in values that name sides, kinds and places themselves."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import Any

from attrs import field, frozen

from grammar.core.guards import Count, Guard
from grammar.core.play import Factor, Guarding, Hold, Home, Lines, Offer, Service, Unfetched
from grammar.core.rules import Rest, Rule
from grammar.core.values import (
    PLAIN,
    AreaId,
    CatalogueId,
    KindId,
    OnStep,
    Owner,
    Part_of_a_side,
    Population,
    RoleId,
    SideId,
    Sort,
    Spot,
    Spread,
    SwitchId,
    Thing,
    TrackId,
    Upon,
)
from grammar.span import Span


class Cut(Enum):
    """How a court is divided among the sides."""

    WHOLE = "in one piece"
    PARTS = "in parts"


@frozen
class Court:
    """Length runs from back line to back line."""

    length_m: Fraction
    width_m: Fraction
    cut: Cut


class AreaKind(Enum):
    """What an area is; who waits in a queue keeps their order."""

    STRIP = "strip"
    ZONE = "zone"
    BENCH = "bench"
    QUEUE = "queue"
    BASE = "base"
    CIRCLE = "circle"
    MARK = "mark"


class Doing(Enum):
    """What nobody does in an area."""

    ENTER = "enters"
    ACT = "acts"
    GUARD = "guards"


@frozen
class Room:
    """At most so many of these players find room."""

    who: frozenset[Population]
    most: int


@frozen
class Area:
    """An area of one owner and where it lies."""

    id: AreaId
    owner: Owner
    kind: AreaKind
    lies: Spot
    depth_m: Fraction | None
    shut: frozenset[Doing]
    room: tuple[Room, ...]
    lines: Lines = field(eq=False)


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


@frozen
class Kind:
    """What a kind of thing is like: `scale` 3/2 is half as big again; one of several parts falls part by part."""

    id: KindId
    sort: Sort
    like: CatalogueId
    scale: Fraction
    parts: int
    lines: Lines = field(eq=False)


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
    """Where tokens are at the set-up."""

    what: Thing | Population
    count: int | All | AllBut
    at: Spot | OnStep | Upon
    spread: Spread | None
    lines: Lines = field(eq=False)


@frozen
class Won:
    """A side has won."""

    side: SideId


class NoWinner(Enum):
    """An end without a winner."""

    DRAW = "a draw"
    NOBODY = "nobody wins"


@frozen
class Most:
    """Whoever has more of it (or fewer) has won."""

    counts: frozenset[tuple[SideId, Count]]
    more: bool


Verdict = Won | NoWinner | Most


@frozen
class End:
    """The round ends when a guard holds; of several verdicts the first that decides, decides."""

    guard: Guard
    verdicts: tuple[Verdict, ...]
    lines: Lines = field(eq=False)


@frozen
class Bell:
    """The clock ends the round."""

    after_s: Fraction
    verdicts: tuple[Verdict, ...]
    lines: Lines = field(eq=False)


@frozen
class Tie:
    """What counts where two sides win with one move."""

    verdict: Verdict
    lines: Lines = field(eq=False)


class Seats(Enum):
    """What the sides exchange between rounds or halves."""

    NOTHING = "nothing"
    TASKS = "tasks"
    ENDS = "ends"


@frozen
class Match:
    """What is played: one round, the best of several, or two halves whose points are added."""

    rounds: int = 1
    halves: bool = False
    change: Seats = Seats.NOTHING
    ends_after_each_round: bool = False
    ends_at_half_time: bool = False
    lines: Lines = field(eq=False, default=())


@frozen
class Choice:
    """A switch of the game: how it usually stands, how it stands now, and the values that hang on it."""

    id: SwitchId
    usual: bool
    on: bool
    hanging: tuple[object, ...]


def _unordered() -> Any:
    """A tuple in the order of the sheet, which decides nothing: compared as a set."""
    return field(eq=frozenset)


@frozen
class Play:
    """All that decides how a game goes. Two games are played alike when these are equal.

    `before` holds the pairs of rules of which the first is asked first where both could hold.
    """

    court: Court
    sides: tuple[Side, ...]
    organisation: Organisation
    factors: tuple[Factor, ...]
    ends: tuple[End, ...]
    bell: Bell | None
    tie: Tie | None
    open_end: bool
    match: Match
    mirrored: frozenset[SideId]
    before: frozenset[tuple[Rule, Rule]]
    choices: tuple[Choice, ...] = _unordered()
    areas: tuple[Area, ...] = _unordered()
    tracks: tuple[Track, ...] = _unordered()
    roles: tuple[Role, ...] = _unordered()
    kinds: tuple[Kind, ...] = _unordered()
    supplies: tuple[Supply, ...] = _unordered()
    starts: tuple[Start, ...] = _unordered()
    homes: tuple[Home, ...] = _unordered()
    offers: tuple[Offer, ...] = _unordered()
    services: tuple[Service, ...] = _unordered()
    unfetched: tuple[Unfetched, ...] = _unordered()
    holds: tuple[Hold, ...] = _unordered()
    guarding: tuple[Guarding, ...] = _unordered()
    rests: tuple[Rest, ...] = _unordered()
    rules: tuple[Rule, ...] = _unordered()

    @property
    def side_ids(self) -> tuple[SideId, ...]:
        """The sides, in the order of the sheet."""
        return tuple(side.id for side in self.sides)

    def others(self, side: SideId) -> tuple[SideId, ...]:
        """The sides against a side."""
        return tuple(other for other in self.side_ids if other != side)

    def populations(self, *sides: SideId) -> tuple[Population, ...]:
        """The populations of these sides, or of all; players without a role come first."""
        return tuple(Population(side, role) for side in sides or self.side_ids for role in self.roles_of(side))

    def roles_of(self, side: SideId) -> tuple[Part_of_a_side, ...]:
        """The roles of a side; players without one come first."""
        return (PLAIN, *(role.id for role in self.roles if role.side == side))

    def role(self, who: Population) -> Role | None:
        """The role of a population, or None for players without one."""
        return next((role for role in self.roles if (role.side, role.id) == (who.side, who.role)), None)

    def kind(self, kind: KindId) -> Kind:
        """The kind of that id."""
        return next(each for each in self.kinds if each.id == kind)

    def of_sort(self, sort: Sort) -> tuple[KindId, ...]:
        """The kinds of a sort."""
        return tuple(kind.id for kind in self.kinds if kind.sort is sort)

    def things(self, kind: KindId) -> tuple[Thing, ...]:
        """Things of a kind, by who owns them at the start."""
        return tuple(dict.fromkeys(supply.thing for supply in self.supplies if supply.thing.kind == kind))

    def area(self, spot: Spot) -> Area | None:
        """The area that a spot names, or None for a landmark."""
        return next((area for area in self.areas if (area.id, area.owner) == (spot.of, spot.owner)), None)

    def track_of(self, kind: KindId) -> Track | None:
        """The track on which the set-up puts things of a kind, or None."""
        on = {start.at.track for start in self.starts if isinstance(start.at, OnStep) and _of(start.what) == kind}
        return next((track for track in self.tracks if track.id in on), None)


def _of(what: Thing | Population) -> KindId | None:
    return what.kind if isinstance(what, Thing) else None


@frozen
class Facts:
    """For whom, and what it practises."""

    ages_years: tuple[Fraction, Fraction]
    skills: tuple[str, ...]


@frozen
class Line:
    """A line of the sheet (or one taken for granted): where it stands, and whether the check reads it."""

    number: int
    section: str
    words: str
    span: Span = field(eq=False)
    granted: bool = False
    switch: SwitchId | None = None
    read: bool = True


@frozen
class Core:
    """A game, resolved: what is played, for whom, and the lines that say so."""

    title: str
    play: Play
    facts: Facts
    lines: tuple[Line, ...] = field(eq=False)
    plurals: tuple[tuple[KindId, str], ...] = field(eq=False, default=())
