"""What every reading of a sentence needs: the names of the sheet and the parts of the core that are known so far."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from attrs import define, field

from grammar.core.game import Area, AreaKind, Court, Cut, Kind, Role, Side, Start, Supply, Track
from grammar.core.values import (
    OF_A_SIDE,
    PLAIN,
    SHARED,
    AreaId,
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
)
from grammar.core.whose import Claimed, Senseless, Spoken, Whose, whose
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning, SideMeaning
from grammar.sentences.base import Name, Node, Np, Quantity

_PARTS = {
    None: Part.AT,
    "on": Part.AT,
    "in": Part.AT,
    "behind": Part.BEHIND,
    "before": Part.BEFORE,
    "beside": Part.BESIDE,
    "across": Part.ACROSS,
    "along": Part.ALONG,
}


def exactly(number: Quantity) -> Fraction:
    """A number as written, in its unit."""
    return Fraction(number.value).limit_denominator(10**6)


def metres(number: Quantity) -> Fraction:
    """A length."""
    return Fraction(number.metres).limit_denominator(10**6)


def seconds(number: Quantity) -> Fraction:
    """A time."""
    return Fraction(number.seconds).limit_denominator(10**6)


@define
class Reader:
    """The sheet's names, and what has been read so far. `pairs` are the sides with whom they aim at."""

    game: Game
    court: Court
    sides: list[Side] = field(factory=list)
    roles: list[Role] = field(factory=list)
    areas: list[Area] = field(factory=list)
    tracks: list[Track] = field(factory=list)
    kinds: list[Kind] = field(factory=list)
    supplies: list[Supply] = field(factory=list)
    starts: list[Start] = field(factory=list)
    carried: frozenset[KindId] = frozenset()
    pairs: tuple[tuple[SideId, Owner], ...] = ()
    changing_owners: bool = False
    granted: bool = False

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

    def others(self, side: SideId) -> frozenset[SideId]:
        """The sides against a side."""
        return frozenset(self.side_ids) - {side}

    def populations(self, sides: Iterable[SideId]) -> tuple[Population, ...]:
        """The populations of these sides, in the order of the sheet, players without a role first."""
        wanted = set(sides)
        return tuple(Population(side, role) for side in self.side_ids if side in wanted for role in self.roles_of(side))

    def roles_of(self, side: SideId) -> tuple[Part_of_a_side, ...]:
        return (PLAIN, *(role.id for role in self.roles if role.side == side))

    # ---- phrases --------------------------------------------------------------------------------

    def player_phrase(self, phrase: Np) -> tuple[Claimed, RoleId | None]:
        """Whose players a phrase means, and in which role (None: whoever)."""
        meaning = self.game.meaning(phrase.name)
        said = whose(self.game, phrase)
        if isinstance(meaning, SideMeaning):
            meaning = PlayerMeaning(meaning.side)
        if not isinstance(meaning, PlayerMeaning):
            raise Senseless(phrase, f"`{phrase.words()}` does not mean players.", "Name players, a side or a role.")
        if meaning.side is not None:
            named = Claimed(Whose.NAMED, phrase, SideId(meaning.side))
            if said.whose is not Whose.UNSAID and said != named and said.side != named.side and not _other_of(phrase):
                raise Senseless(phrase, f"`{phrase.words()}` says of two sides whose they are.", "Name one side.")
            said = said if said.whose is Whose.OTHER else named
        return said, RoleId(meaning.role) if meaning.role else None

    def of_role(self, sides: Iterable[SideId], role: RoleId | None) -> tuple[Population, ...]:
        """The populations of these sides in a role, or all of them."""
        return tuple(each for each in self.populations(sides) if role is None or each.role == role)

    def kit_lines(self, name: Name) -> tuple[GameKit, ...]:
        return self.game.kit_meant(name)

    def kinds_meant(self, phrase: Np | Name, *sorts: Sort) -> tuple[KindId, ...]:
        """The kinds that a phrase means, of these sorts: the one that it names, or all of a category."""
        name = phrase.name if isinstance(phrase, Np) else phrase
        found = dict.fromkeys(KindId(line.name) for line in self.kit_lines(name))
        return tuple(kind for kind in found if self.sort(kind) in sorts)

    def sort(self, kind: KindId) -> Sort:
        return next(each.sort for each in self.kinds if each.id == kind)

    def is_kit(self, phrase: Np) -> bool:
        return isinstance(self.game.meaning(phrase.name), KitMeaning | CategoryMeaning)

    def balls(self, phrase: Np | Name) -> tuple[KindId, ...]:
        """The kinds of balls that a phrase means. A ball belongs to nobody."""
        if isinstance(phrase, Np):
            said = whose(self.game, phrase)
            if said.whose is not Whose.UNSAID:
                raise Senseless(
                    said.node,
                    f"`{phrase.words()}`: a ball belongs to nobody; whoever has it at hand may use it.",
                    f"Write: {_plainly(phrase)}",
                )
        found = self.kinds_meant(phrase, Sort.BALL)
        if not found or self.shot(phrase):
            raise Senseless(phrase, f"`{phrase.words()}` is no ball.", "Name a ball of the kit.")
        return found

    def shot(self, phrase: Np | Name) -> tuple[Skill, ...]:
        """The skills of a phrase that names an attempt instead of a ball, such as "a roll"; none for a ball."""
        meaning = self.game.meaning(phrase.name if isinstance(phrase, Np) else phrase)
        return tuple(Skill(skill) for skill in meaning.skills) if isinstance(meaning, CategoryMeaning) else ()

    def things(self, kinds: Iterable[KindId], owners: Iterable[Owner]) -> tuple[Thing, ...]:
        """All things of these kinds that one of these owners has, or may come to have."""
        wanted = set(owners)
        return tuple(thing for kind in kinds for thing in self.owned(kind) if thing.owner in wanted)

    def owned(self, kind: KindId) -> tuple[Thing, ...]:
        """Things of a kind by owner: at the start, and where things change owners all sides."""
        first = dict.fromkeys(supply.thing for supply in self.supplies if supply.thing.kind == kind)
        if self.changing_owners and self.sort(kind) is Sort.TARGET:
            first |= dict.fromkeys(Thing(kind, side) for side in self.side_ids)
        return tuple(first)

    def thing_phrase(
        self, phrase: Np, spoken: Spoken, unsaid: frozenset[SideId], *sorts: Sort, shared: bool = True
    ) -> tuple[Thing, ...]:
        """The things of a phrase. What is nobody's is meant where the phrase does not say whose, or says anybody's."""
        said = whose(self.game, phrase)
        owners: set[Owner] = set(spoken.meant(said, unsaid))
        kinds = self.kinds_meant(phrase, *sorts)
        if (shared and said.whose in (Whose.UNSAID, Whose.ANY, Whose.ONE_EACH)) or (
            said.whose is Whose.OTHER and len(self.sides) == 1
        ):
            owners.add(SHARED)
        found = self.things(kinds, owners)
        if not found:
            raise Senseless(phrase, f"There are no such things: `{phrase.words()}`.", self._hint_of_owner(kinds))
        return found

    def _hint_of_owner(self, kinds: tuple[KindId, ...]) -> str:
        if not kinds:
            return "Name a thing of the kit."
        owners = {thing.owner for kind in kinds for thing in self.owned(kind)}
        if owners == {SHARED}:
            return "They belong to nobody: leave out whose they are."
        return "See in the kit whose they are."

    def place(self, phrase: Np) -> Landmark | AreaId:
        """The landmark or the area of a phrase."""
        meaning = self.game.meaning(phrase.name)
        if not isinstance(meaning, PlaceMeaning):
            raise Senseless(phrase, f"`{phrase.words()}` is no place.", "Name a place of the court, or an area.")
        return Landmark(meaning.place) if meaning.built_in else AreaId(meaning.place)

    def part(self, preposition: str | None, node: Node, *allowed: Part) -> Part:
        """How something lies to a place."""
        found = _PARTS.get(preposition)
        if found is None or (allowed and found not in allowed):
            raise Senseless(node, f"Nothing lies `{preposition} {node.words()}`.", "Write on, in, before or behind.")
        return found

    def owners_of_place(self, of: Landmark | AreaId) -> tuple[Owner, ...]:
        """Each owner of a place: every side for a half, one for an area that lies once."""
        if isinstance(of, AreaId):
            return tuple(area.owner for area in self.areas if area.id == of)
        return self.side_ids if of in OF_A_SIDE else (SHARED,)

    def spots(
        self,
        preposition: str | None,
        phrase: Np,
        spoken: Spoken,
        unsaid: frozenset[SideId],
        parts: tuple[Part, ...] = (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE),
    ) -> tuple[Spot, ...]:
        """All places of a phrase, one for each owner that is meant."""
        of = self.place(phrase)
        part = self.part(preposition, phrase, *parts)
        said = whose(self.game, phrase, place=True)
        owners = self.owners_of_place(of)
        if owners == (SHARED,):
            if said.whose not in (Whose.UNSAID, Whose.ONE_EACH):
                raise Senseless(
                    said.node,
                    f"`{phrase.words()}`: there is one for all sides.",
                    f"Leave out whose it is: the {phrase.name.text}.",
                )
            return (Spot(_as_lain(of, part), SHARED, part),)
        wanted = spoken.meant(said, unsaid)
        if of is Landmark.HALF and self.court.cut is Cut.WHOLE:
            return self._without_halves(phrase)
        found = tuple(Spot(of, owner, part) for owner in owners if owner in wanted)
        if not found:
            raise Senseless(phrase, f"`{phrase.words()}`: that side has none.", "Say of which side it is.")
        return found

    def _without_halves(self, phrase: Np) -> tuple[Spot, ...]:
        """What is taken for granted of a half holds of an undivided court, too; a sheet cannot say it of one."""
        if self.granted:
            return (Spot(Landmark.COURT, SHARED),)
        raise Senseless(phrase, "This court has no halves.", 'Write "court …, halved across", or name another place.')

    def own_part(self, side: SideId) -> Spot:
        """The part of the court that is a side's own: its half, or the whole where there are no halves."""
        return Spot(Landmark.COURT, SHARED) if self.court.cut is Cut.WHOLE else Spot(Landmark.HALF, side)

    def stands_at(self, thing: Thing, spots: frozenset[Spot]) -> bool:
        """Whether things start at one of these places, or in a half that is one of them."""
        at = [start.at for start in self.starts if start.what == thing and isinstance(start.at, Spot)]
        return bool(at) and all(spot in spots or self.half_of(spot) in spots for spot in at)

    def half_of(self, spot: Spot) -> Spot:
        """The half, or the court, in which a place on the floor lies."""
        return self.own_part(spot.owner) if isinstance(spot.owner, SideId) else Spot(Landmark.COURT, SHARED)

    def waits_in(self, spot: Spot) -> bool:
        """Whether players can wait at a place: in an area of the sheet, not on the court as such."""
        return isinstance(spot.of, AreaId) and spot.part is Part.AT

    def area_kind(self, area: AreaId) -> AreaKind:
        return next(each.kind for each in self.areas if each.id == area)


def _as_lain(of: Landmark | AreaId, part: Part) -> Landmark | AreaId:
    """A ball on the middle line lies in the middle."""
    return Landmark.MIDDLE if of is Landmark.MIDDLE_LINE and part is Part.AT else of


def _other_of(phrase: Np) -> bool:
    return bool(phrase.other) or bool(getattr(phrase.owner, "other", None))


def _plainly(phrase: Np) -> str:
    return f"a {phrase.name.text}"
