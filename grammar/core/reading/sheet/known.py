"""What has been read of a sheet so far."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from attrs import define, field

from grammar.core.declared import Area, Court, Cut, Kind, Role, Side, Start, Supply, Track
from grammar.core.lives import Lives
from grammar.core.reading.sheet.whose import Whose
from grammar.core.values import (
    OF_A_SIDE,
    PLAIN,
    SHARED,
    AreaId,
    At,
    KindId,
    Landmark,
    Owner,
    Part,
    Part_of_a_side,
    Population,
    RoleId,
    SideId,
    Skill,
    Sort,
    Spot,
    Thing,
    without_load,
)
from grammar.game import Game


@define
class Known:
    """The sheet's names, and what has been read so far.

    `tried` are the skills that anybody tries, `sent_at` whom and what balls are sent at, `pairs` the sides with whom
    they aim at, `touching` who touches, `chased_for` the balls for which they touch who has one, `bell_s` is when the
    clock ends the round, `sent_over` whose areas of each name rules send players to, `passed_to` where team-mates wait
    for passes.
    """

    game: Game
    court: Court
    sides: list[Side] = field(factory=list)
    roles: list[Role] = field(factory=list)
    lives: list[Lives] = field(factory=list)
    first_times: list[int] = field(factory=list)
    areas: list[Area] = field(factory=list)
    tracks: list[Track] = field(factory=list)
    kinds: list[Kind] = field(factory=list)
    supplies: list[Supply] = field(factory=list)
    starts: list[Start] = field(factory=list)
    posts: list[Start] = field(factory=list)
    carried: frozenset[KindId] = frozenset()
    brought: frozenset[KindId] = frozenset()
    tried: frozenset[Skill] = frozenset()
    blocked: frozenset[Thing] = frozenset()
    sent_at: frozenset[Population | Thing] = frozenset()
    run_with: frozenset[KindId] = frozenset()
    only_entered: frozenset[KindId] = frozenset()
    pairs: tuple[tuple[SideId, Owner], ...] = ()
    touching: frozenset[Population] = frozenset()
    chased_for: frozenset[KindId] = frozenset()
    senders: frozenset[tuple[Population, KindId]] = frozenset()
    taken: frozenset[KindId] = frozenset()
    laden: list[Population] = field(factory=list)
    changing_owners: frozenset[KindId] = frozenset()
    sent_over: Mapping[AreaId, frozenset[Whose]] = field(factory=dict)
    passed_to: frozenset[tuple[SideId, At]] = frozenset()
    held: bool = False
    granted: bool = False
    bell_s: Fraction | None = None

    @property
    def side_ids(self) -> tuple[SideId, ...]:
        return tuple(side.id for side in self.sides)

    @property
    def all_pairs(self) -> tuple[tuple[SideId, Owner], ...]:
        """Every side with everybody whose things or players it could aim at."""
        owners: tuple[Owner, ...] = (*self.side_ids, SHARED)
        return tuple((side, owner) for side in self.side_ids for owner in owners)

    @property
    def all_sides(self) -> frozenset[SideId]:
        return frozenset(self.side_ids)

    @property
    def solo(self) -> bool:
        """Whether each plays for themselves."""
        return any(side.solo for side in self.sides)

    def others(self, side: SideId) -> frozenset[SideId]:
        """The sides against a side."""
        return frozenset(self.side_ids) - {side}

    def populations(self, sides: Iterable[SideId]) -> tuple[Population, ...]:
        """The populations of these sides, in the order of the sheet, players without a role first."""
        wanted = set(sides)
        return tuple(Population(side, role) for side in self.side_ids if side in wanted for role in self.roles_of(side))

    def roles_of(self, side: SideId) -> tuple[Part_of_a_side, ...]:
        laden = (who.role for who in self.laden if who.side == side)
        return (PLAIN, *(role.id for role in self.roles if role.side == side), *laden)

    def of_role(self, sides: Iterable[SideId], role: RoleId | None) -> tuple[Population, ...]:
        """The populations of these sides in a role, or all of them."""
        return tuple(each for each in self.populations(sides) if role in (None, without_load(each.role)))

    def sort(self, kind: KindId) -> Sort:
        return next(each.sort for each in self.kinds if each.id == kind)

    def things(self, kinds: Iterable[KindId], owners: Iterable[Owner]) -> tuple[Thing, ...]:
        """All things of these kinds that one of these owners has, or may come to have."""
        wanted = set(owners)
        return tuple(thing for kind in kinds for thing in self.owned(kind) if thing.owner in wanted)

    def owned(self, kind: KindId) -> tuple[Thing, ...]:
        """Things of a kind by owner: at the start, and where they change owners all sides."""
        first = dict.fromkeys(supply.thing for supply in self.supplies if supply.thing.kind == kind)
        if kind in self.changing_owners:
            first |= dict.fromkeys(Thing(kind, side) for side in self.side_ids)
        return tuple(first)

    def owners_of_place(self, of: Landmark | AreaId) -> tuple[Owner, ...]:
        """Each owner of a place: every side for a half, one for an area that lies once."""
        if isinstance(of, AreaId):
            return tuple(area.owner for area in self.areas if area.id == of)
        return self.side_ids if of in OF_A_SIDE else (SHARED,)

    def own_part(self, side: SideId) -> Spot:
        """Where a side has its balls: in its half; without halves in its hands, or anywhere where all share them."""
        if self.held:
            return Spot(Landmark.HANDS, side)
        return Spot(Landmark.COURT, SHARED) if self.court.cut is Cut.WHOLE else Spot(Landmark.HALF, side)

    def stands_at(self, thing: Thing, spots: frozenset[Spot]) -> bool:
        """Whether things start at one of these places, or in a half that is one of them."""
        at = [start.at for start in self.starts if start.what == thing and isinstance(start.at, Spot)]
        return bool(at) and all(spot in spots or self.half_of(spot) in spots for spot in at)

    def half_of(self, spot: Spot) -> Spot:
        """The half, or the court, in which a place on the floor lies."""
        halved = isinstance(spot.owner, SideId) and self.court.cut is not Cut.WHOLE
        return Spot(Landmark.HALF, spot.owner) if halved else Spot(Landmark.COURT, SHARED)

    def waits_in(self, spot: Spot) -> bool:
        """Whether players can wait at a place: in an area of the sheet, not on the court as such."""
        return isinstance(spot.of, AreaId) and spot.part is Part.AT
