"""The resolved game: all that a sheet says, in values that name sides, kinds and places themselves."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from grammar.core.begin_points import BeginPoints
from grammar.core.declared import Area, Court, Kind, Organisation, Role, Side, Start, Supply, Track
from grammar.core.ends import Bell, End, EndPoints, Match, Tie
from grammar.core.factor import Factor
from grammar.core.limits import CountsOnly, LowDown, Steps
from grammar.core.lives import Lives
from grammar.core.play import (
    Attempt,
    AtThing,
    Guarding,
    Hold,
    Home,
    Lines,
    Offer,
    PointsCount,
    Service,
    Through,
    Unfetched,
)
from grammar.core.rotation import Rotation
from grammar.core.rules import Add, Rest, Rule
from grammar.core.stopping import Blocking
from grammar.core.values import (
    PLAIN,
    KindId,
    OnStep,
    Part_of_a_side,
    Plain,
    Population,
    RoleId,
    SideId,
    Sort,
    Spot,
    SwitchId,
    Thing,
    without_load,
)
from grammar.frozen import field, frozen
from grammar.span import Span


@frozen
class Choice:
    """A switch of the game: how it usually stands, how it stands now, and the values that hang on it, and that hold
    `without` it."""

    id: SwitchId
    usual: bool
    on: bool
    hanging: tuple[object, ...]
    without: tuple[object, ...] = ()


def _unordered() -> Any:
    """A tuple in the order of the sheet, which decides nothing: compared as a set."""
    return field(eq=frozenset)


@frozen(cache_hash=True)  # a key of many look-ups
class Play:
    """All that decides how a game goes. Two games are played alike when these are equal.

    `before` holds the pairs of rules of which the first is asked first where both could hold. `held`: on a court in
    one piece the ball is somebody's, so that only the side that has it may use it.
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
    lives: tuple[Lives, ...] = _unordered()
    begin_points: tuple[BeginPoints, ...] = _unordered()
    kinds: tuple[Kind, ...] = _unordered()
    supplies: tuple[Supply, ...] = _unordered()
    starts: tuple[Start, ...] = _unordered()
    homes: tuple[Home, ...] = _unordered()
    offers: tuple[Offer, ...] = _unordered()
    services: tuple[Service, ...] = _unordered()
    unfetched: tuple[Unfetched, ...] = _unordered()
    holds: tuple[Hold, ...] = _unordered()
    guarding: tuple[Guarding, ...] = _unordered()
    blocking: tuple[Blocking, ...] = _unordered()
    valid: tuple[CountsOnly, ...] = _unordered()
    steps: tuple[Steps, ...] = _unordered()
    counting: tuple[PointsCount, ...] = _unordered()
    end_points: tuple[EndPoints, ...] = _unordered()
    rests: tuple[Rest, ...] = _unordered()
    rules: tuple[Rule, ...] = _unordered()
    laden: tuple[Population, ...] = _unordered()
    rotations: tuple[Rotation, ...] = _unordered()
    low: tuple[LowDown, ...] = _unordered()
    open_lines: Lines = field(eq=False, default=())
    held: bool = False

    @property
    def side_ids(self) -> tuple[SideId, ...]:
        """The sides, in the order of the sheet."""
        return tuple(side.id for side in self.sides)

    @property
    def tries(self) -> tuple[tuple[Offer, Attempt], ...]:
        """All that anybody may try, with the offer by which they may."""
        return tuple((offer, attempt) for offer in self.offers for attempt in offer.attempts)

    @property
    def attempts(self) -> tuple[Attempt, ...]:
        """All that anybody may try."""
        return tuple(attempt for _, attempt in self.tries)

    @property
    def aimed_at(self) -> frozenset[Thing]:
        """The things at which somebody aims, or which a miss may hit."""
        aims = (attempt.aim for attempt in self.attempts)
        strays = (offer.figures.stray for offer in self.offers)
        aimed = {aim.thing for aim in aims if isinstance(aim, AtThing | Through)}
        return frozenset(aimed).union(*(stray.at for stray in strays if stray))

    @property
    def gives_points(self) -> bool:
        """Whether anything that happens, or that a side has at the end, scores."""
        return bool(self.end_points) or any(isinstance(each, Add) for rule in self.rules for each in rule.effects)

    def others(self, side: SideId) -> tuple[SideId, ...]:
        """The sides against a side."""
        return tuple(other for other in self.side_ids if other != side)

    def populations(self, *sides: SideId) -> tuple[Population, ...]:
        """The populations of these sides, or of all; players without a role come first."""
        return tuple(Population(side, role) for side in sides or self.side_ids for role in self.roles_of(side))

    def roles_of(self, side: SideId) -> tuple[Part_of_a_side, ...]:
        """The roles of a side; players without one come first, those who carry something last."""
        laden = (who.role for who in self.laden if who.side == side)
        return (PLAIN, *(role.id for role in self.roles if role.side == side), *laden)

    def tasks_of(self, side: SideId) -> tuple[RoleId | Plain, ...]:
        """The roles of a side, whoever carries something counted with the others of the role."""
        return tuple(dict.fromkeys(without_load(role) for role in self.roles_of(side)))

    def role(self, who: Population) -> Role | None:
        """The role of a population, or None for players without one."""
        own = (who.side, without_load(who.role))
        return next((role for role in self.roles if (role.side, role.id) == own), None)

    def lives_of(self, who: Population) -> int | None:
        """How many lives each player of a population has; None where lives are not counted."""
        return next((each.number for each in self.lives if each.who == who), None)

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
    """For whom, and what it practises; `lines` are those that say what. `posts` are where players start who are in
    play from there: no rule hangs on it."""

    ages_years: tuple[Fraction, Fraction]
    skills: tuple[str, ...]
    lines: Lines = field(eq=False, default=())
    posts: tuple[Start, ...] = ()


@frozen
class Line:
    """A line of the sheet (or one taken for granted): where it stands, whether the check reads it, and the switch that
    it hangs on, or that it holds `without`."""

    number: int
    section: str
    words: str
    span: Span = field(eq=False)
    granted: bool = False
    switch: SwitchId | None = None
    read: bool = True
    without: bool = False


@frozen
class Told:
    """What the sheet tells people, in its own words; `quotes` are its lines in quotes by their number, `anyway` those
    that hold in every game, `spoken_of` the roles that these, or its cautions, name."""

    about: tuple[str, ...] = ()
    cues: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    care: tuple[str, ...] = ()
    credit: tuple[str, ...] = ()
    outcomes: tuple[str, ...] = ()
    licence: str = ""
    quotes: tuple[tuple[int, str], ...] = ()
    anyway: frozenset[int] = frozenset()
    spoken_of: frozenset[RoleId] = frozenset()


@frozen
class Core:
    """A game, resolved: what is played, for whom, and the lines that say so.

    `called` holds what one player of a side is called, of sides that are called by their players.
    """

    title: str
    play: Play
    facts: Facts
    lines: tuple[Line, ...] = field(eq=False)
    told: Told = field(eq=False, default=Told())
    plurals: tuple[tuple[KindId, str], ...] = field(eq=False, default=())
    called: tuple[tuple[SideId, str], ...] = field(eq=False, default=())
