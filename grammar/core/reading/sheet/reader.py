"""What every reading of a sentence needs: the names of the sheet and the parts of the core that are known so far."""

from __future__ import annotations

from fractions import Fraction

from attrs import define

from grammar.core.declared import Cut
from grammar.core.reading.sheet.known import Known
from grammar.core.reading.sheet.whose import Claimed, Senseless, Spoken, Whose, whose
from grammar.core.values import SHARED, AreaId, KindId, Landmark, Owner, Part, RoleId, SideId, Skill, Sort, Spot, Thing
from grammar.game import GameKit
from grammar.meanings import (
    FIXED,
    CategoryMeaning,
    FrozenMeaning,
    KitMeaning,
    LoadMeaning,
    PlaceMeaning,
    PlayerMeaning,
    SideMeaning,
)
from grammar.said import quoting, write
from grammar.sentences.base import Name, Node, Np, Quantity, spoken

_PARTS = {
    None: Part.AT,
    "on": Part.AT,
    "in": Part.AT,
    "behind": Part.BEHIND,
    "before": Part.BEFORE,
    "beside": Part.BESIDE,
    "across": Part.ACROSS,
    "along": Part.ALONG,
    "around": Part.AROUND,
}


ALL_SKILLS = frozenset(Skill)


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
class Reader(Known):
    """Turns phrases into what they mean, by what is known so far."""

    def player_phrase(self, phrase: Np) -> tuple[Claimed, RoleId | None]:
        """Whose players a phrase means, and in which role (None: whoever)."""
        meaning = self.game.meaning(phrase.name)
        said = whose(self.game, phrase)
        if isinstance(meaning, SideMeaning):
            meaning = PlayerMeaning(meaning.side)
        if isinstance(meaning, FrozenMeaning):
            meaning = PlayerMeaning(meaning.side, meaning.role)
        if not isinstance(meaning, PlayerMeaning):
            raise Senseless(phrase, "`{said}` does not mean players.", "Name players, a side or a role.")
        if meaning.side is not None:
            named = Claimed(Whose.NAMED, phrase, SideId(meaning.side))
            if said.whose is not Whose.UNSAID and said != named and said.side != named.side and not _other_of(phrase):
                raise Senseless(phrase, "`{said}` says of two sides whose they are.", "Name one side.")
            if said.whose is Whose.OTHER and meaning.role is None and len(self.sides) > 1:
                title = "`{said}`: {side} are one side, and whose other one is not said."
                raise Senseless(phrase, title, write("the players of the other side"), side=meaning.side)
            alone = len(self.sides) == 1  # "other minnows": the others of one side; a side that is named is that side
            said = said if said.whose is Whose.OTHER and alone else named
        return said, RoleId(meaning.role) if meaning.role else None

    def of_one(self, side: SideId) -> Spoken:
        """Who the words of a sentence mean that speaks of one side."""
        return Spoken(self.side_ids, frozenset({side}), frozenset({side}), self.others(side) or None)

    def kit_lines(self, name: Name) -> tuple[GameKit, ...]:
        return self.game.kit_meant(name)

    def kinds_meant(self, phrase: Np | Name, *sorts: Sort) -> tuple[KindId, ...]:
        """The kinds that a phrase means, of these sorts: the one that it names, or all of a category."""
        name = phrase.name if isinstance(phrase, Np) else phrase
        found = dict.fromkeys(KindId(line.name) for line in self.kit_lines(name))
        meaning = self.game.vocabulary.get(name.text)
        if self.granted and isinstance(meaning, CategoryMeaning) and meaning.category == FIXED.category:
            fixed = {kind.id for kind in self.kinds if kind.fixed}
            found = dict.fromkeys(kind for kind in found if (kind in fixed) == meaning.fixed)
        return tuple(kind for kind in found if self.sort(kind) in sorts)

    def is_kit(self, phrase: Np) -> bool:
        return isinstance(self.game.meaning(phrase.name), KitMeaning | CategoryMeaning | LoadMeaning)

    def balls(self, phrase: Np | Name) -> tuple[KindId, ...]:
        """The kinds of balls that a phrase means. A ball belongs to nobody."""
        if isinstance(phrase, Np):
            said = whose(self.game, phrase)
            if said.whose is not Whose.UNSAID:
                raise Senseless(
                    said.node,
                    "`{said}`: a ball belongs to nobody; whoever has it at hand may use it.",
                    write(_plainly(phrase)),
                    said=phrase.words(),
                )
        found = self.kinds_meant(phrase, Sort.BALL)
        if not found or self.shot(phrase):
            body = not self.shot(phrase) and bool(self.kinds_meant(phrase, Sort.BODY))
            pushed = "`{said}` is no ball: it is aimed at, or pushed and carried, and not sent."
            raise Senseless(phrase, pushed if body else "`{said}` is no ball.", "Name a ball of the kit.")
        return found

    def shot(self, phrase: Np | Name) -> tuple[Skill, ...]:
        """The skills of a phrase that names an attempt instead of a ball, such as "a roll"; none for a ball."""
        meaning = self.game.meaning(phrase.name if isinstance(phrase, Np) else phrase)
        return tuple(Skill(skill) for skill in meaning.skills) if isinstance(meaning, CategoryMeaning) else ()

    def thing_phrase(
        self, phrase: Np, spoken: Spoken, unsaid: frozenset[SideId], *sorts: Sort, some: bool = True
    ) -> tuple[Thing, ...]:
        """The things of a phrase. What is nobody's is meant only where the phrase does not say whose.

        Raises Senseless where there are none, unless there need not be `some`.
        """
        said = whose(self.game, phrase)
        owners: set[Owner] = set(spoken.meant(said, unsaid))
        kinds = self.kinds_meant(phrase, *sorts)
        if said.whose is Whose.UNSAID or len(self.sides) == 1:
            owners.add(SHARED)
        found = self.things(kinds, owners)
        if not found and Sort.TARGET in sorts and self.kinds_meant(phrase, Sort.LOAD):
            title = "`{said}` are taken from place to place: nobody aims at them."
            raise Senseless(phrase, title, "Name a target that stays where it is.")
        if not found and (some or not kinds):
            raise Senseless(phrase, "There are no such things: `{said}`.", self._hint_of_owner(kinds))
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
            hint = "Name a place of the court, or an area."
            if isinstance(meaning, PlayerMeaning | SideMeaning):
                hint = "Name the place where they have it: an area of the sheet, such as a base or a bench."
            if isinstance(meaning, KitMeaning):
                hint = "Name a place; who guards things says under `play`: a keeper stands before each lantern."
            raise Senseless(phrase, "`{said}` is no place.", hint)
        return Landmark(meaning.place) if meaning.built_in else AreaId(meaning.place)

    def part(self, preposition: str | None, node: Node, *allowed: Part) -> Part:
        """How something lies to a place."""
        found = _PARTS.get(preposition)
        if found is None or (allowed and found not in allowed):
            raise Senseless(
                node,
                quoting("Nothing lies `{preposition} {node}`.", preposition=preposition or "", node=node.words()),
                "Write on, in, before or behind.",
            )
        return found

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
        if (of, part) == (Landmark.COURT, Part.BEFORE):
            raise Senseless(phrase, "The court has no front: nothing lies before it.", "Write on, behind or beside it.")
        said = whose(self.game, phrase, place=True)
        owners = self.owners_of_place(of)
        if owners == (SHARED,):
            if said.whose not in (Whose.UNSAID, Whose.ONE_EACH):
                raise Senseless(
                    said.node,
                    "`{said}`: there is one for all sides.",
                    quoting("Leave out whose it is: the {name}.", name=phrase.name.text),
                    said=phrase.words(),
                )
            return (Spot(_as_lain(of, part), SHARED, part),)
        wanted = spoken.meant(said, unsaid)
        if said.whose is Whose.UNSAID and len(owners) == 1:
            wanted = frozenset(self.side_ids)  # the only one of its name, whosever it is
        if of is Landmark.HALF and self.court.cut is Cut.WHOLE:
            return self._without_halves(phrase)
        found = tuple(Spot(of, owner, part) for owner in owners if owner in wanted)
        if not found:
            raise Senseless(phrase, "`{said}`: that side has none.", "Say of which side it is.")
        return found

    def _without_halves(self, phrase: Np) -> tuple[Spot, ...]:
        """What is taken for granted of a half holds of an undivided court, too; a sheet cannot say it of one."""
        if self.granted:
            return (Spot(Landmark.COURT, SHARED),)
        raise Senseless(phrase, "This court has no halves.", 'Write "court …, halved across", or name another place.')


def _as_lain(of: Landmark | AreaId, part: Part) -> Landmark | AreaId:
    """A ball on the middle line lies in the middle."""
    return Landmark.MIDDLE if of is Landmark.MIDDLE_LINE and part is Part.AT else of


def _other_of(phrase: Np) -> bool:
    return bool(phrase.other) or bool(getattr(phrase.owner, "other", None))


def _plainly(phrase: Np) -> str:
    return spoken(phrase.determiner if phrase.determiner not in ("their", "its") else "the", phrase.name)


def with_which(reader: Reader, what: Np | Name) -> tuple[frozenset[Skill], frozenset[KindId]]:
    """Skills and balls of "a ball", "a yarn ball", "a throw", "a roll"."""
    skills = reader.shot(what)
    if not skills:
        return ALL_SKILLS, frozenset(reader.balls(what))
    if isinstance(what, Np) and whose(reader.game, what).whose is not Whose.UNSAID:
        raise Senseless(what, "`{said}` says whose it is.", write(f"a {what.name.text}"))
    return frozenset(skills), frozenset(kind.id for kind in reader.kinds if kind.sort is Sort.BALL)
