"""How a sentence speaks of players, things, places and amounts, from a point of view."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from fractions import Fraction

from compose.telling.nouns import PLAYER, Noun
from compose.telling.side_voice import SideVoice, Subject
from grammar.core.clock import ComeIn
from grammar.core.declared import STOOD_ON, Area, Per
from grammar.core.values import (
    ONE_OF_SEVERAL,
    PLAIN,
    SHARED,
    KindId,
    Laden,
    Landmark,
    OnStep,
    Owner,
    Part,
    Part_of_a_side,
    Population,
    SideId,
    Spot,
    Thing,
    without_load,
)
from grammar.frozen import evolve, frozen

ON = frozenset({Landmark.BACK_LINE, Landmark.SIDE_LINE, Landmark.MIDDLE_LINE, Landmark.COURT})


@frozen
class Voice(SideVoice):
    """The words of a sentence."""

    def of(self, noun: Noun, several: bool, owners: Collection[Owner], determiner: str | None = "the") -> str:
        """A noun with whose it is: "the lanterns of the other side", "their half", "the cones"."""
        sides = self.ordered(owners)
        if not sides:
            return self.nouns.with_article(determiner, noun, several)
        if sides == [self.near] and determiner == "the":
            return self.nouns.with_article(self._own(), noun, several)
        said = self.nouns.with_article(determiner, noun, several)
        owned = [self.it()] if sides == [self.near] and self.subject is not Subject.SIDE else self._sides(sides)
        if self.wording.english:
            return f"{said} of {self.wording.listed(owned)}"
        return f"{said} {self.wording.listed(f'de {side}' for side in owned)}"

    def several(self, things: Collection[Thing]) -> bool:
        """Whether there is more than one of a thing, of one owner."""
        supplies = [supply for supply in self.play.supplies if supply.thing in things]
        return any(supply.count > 1 or supply.per is Per.PLAYER for supply in supplies)

    def the_only_ball(self, kinds: Collection[KindId]) -> bool:
        """Whether there is one ball of these kinds in all, from the beginning to the end."""
        supplies = [supply for supply in self.play.supplies if supply.thing.kind in kinds]
        more = any(isinstance(each, ComeIn) for rule in self.play.rules for each in rule.effects)
        return not more and [(each.count, each.per) for each in supplies] == [(1, Per.OWNER)]

    def things(self, things: Collection[Thing], several: bool | None = None, determiner: str | None = "the") -> str:
        """Things by kind and owners: "a lantern of the other side or a cone"; in the number that there are."""
        owners: dict[KindId, set[Owner]] = {}
        for kind in self.play.kinds:
            owners[kind.id] = {thing.owner for thing in things if thing.kind == kind.id}
        said = []
        for each, whose in owners.items():
            many = self.several([Thing(each, owner) for owner in whose]) if several is None else several
            if SHARED in whose:
                said.append(self.of(self.nouns.kind(each), many, (), determiner))
            if whose - {SHARED}:
                said.append(self.of(self.nouns.kind(each), many, whose - {SHARED}, determiner))
        return self.wording.listed(said, "or")

    def balls(self, kinds: Collection[KindId], several: bool = False, determiner: str | None = "a") -> str:
        """ "a foam ball or a yarn ball"."""
        return self.wording.listed(
            (self.nouns.with_article(determiner, noun, several) for noun in self.nouns.balls(kinds)), "or"
        )

    def any_of(self, kinds: Collection[KindId]) -> str:
        """One thing of these kinds: "a log or a stone"."""
        return self.wording.listed(
            (self.nouns.with_article("a", self.nouns.kind(kind), False) for kind in sorted(kinds)), "or"
        )

    def preposition(self, spot: Spot) -> str:
        """The word before a place."""
        if spot.part is not Part.AT:
            return self.word(spot.part.value)
        if isinstance(spot.of, Landmark):
            return self.word("on" if spot.of in ON else "at" if spot.of is Landmark.WALL else "in")
        area = self.play.area(spot)
        return self.word("on" if area is not None and area.kind in STOOD_ON else "in")

    def word(self, preposition: str) -> str:
        """A preposition in the language."""
        return self.wording.known("preposition", preposition) or preposition

    def place_noun(self, spot: Spot) -> Noun:
        return self.nouns.landmark(spot.of) if isinstance(spot.of, Landmark) else self.nouns.area(spot.of)

    def place(self, spots: Collection[Spot]) -> str:
        """Places with the words before them: "behind the back line of the other side"."""
        return self.wording.listed((self._placed(group, False) for group in _alike(spots)), "or")

    def lies(self, area: Area) -> str:
        """Where an area lies: "in each corner" for all, or of two sides, each of which has two corners; "in 4 places on
        the court"."""
        spot = area.lies
        if area.places > 1 and spot.of in (Landmark.COURT, Landmark.HALF):
            return self.say("in {number} places {where}", number=str(area.places), where=self.place([spot]))
        if area.places == 1 and (spot.of is not Landmark.CORNER or spot.owner is SHARED or len(self.play.sides) > 2):
            return self.place([spot])
        owners = () if spot.owner is SHARED else (spot.owner,)
        return f"{self.preposition(spot)} {self.of(self.place_noun(spot), False, owners, 'each')}"

    def bare_place(self, spots: Collection[Spot]) -> str:
        """The same, without "in" or "on": "the middle", "behind the back line"."""
        return self.wording.listed((self._placed(group, True) for group in _alike(spots)), "or")

    def source(self, spots: Collection[Spot]) -> str:
        """From where something is fetched. French says where it is."""
        return f"from {self.bare_place(spots)}" if self.wording.english else self.place(spots)

    def goal(self, spots: Collection[Spot]) -> str:
        """Where something goes. French says where it is then, or whose it is."""
        if not self.wording.english and all(spot.of is Landmark.HANDS or spot.role for spot in spots):
            return self.say("to {side}", side=self.bare_place(spots))
        return f"to {self.bare_place(spots)}" if self.wording.english else self.place(spots)

    def _placed(self, group: list[Spot], bare: bool) -> str:
        first = group[0]
        if first.of is Landmark.INSIDE:
            return self.say("inside")
        if first.is_frozen:
            return self.say("frozen on the spot")
        if first.of is Landmark.MIDDLE and first.part is Part.AT and not bare:
            return self.say("in the middle")
        owners = {spot.owner for spot in group}
        if first.role is not None:
            with_task = self.of(self.nouns.role(first.role), False, owners, "the")
            return with_task if bare else self.say("with {side}", side=with_task)
        if first.of is Landmark.HANDS:
            return self.sides(owners, "or") if bare else self.say("with {side}", side=self.sides(owners, "or"))
        everybody = len(owners) == len(self.play.sides) > 1
        voice = evolve(self, me=self.play.side_ids[0]) if everybody else self
        one_of_several = owners == {SHARED} and first.of in ONE_OF_SEVERAL
        said = voice.of(self.place_noun(first), False, owners, "a" if one_of_several else "the")
        return said if bare and first.part is Part.AT else f"{self.preposition(first)} {said}"

    def step(self, at: OnStep) -> str:
        """ "step 4 of the drift track"."""
        track = self.nouns.with_article("the", self.nouns.area(at.track), False)
        return self.say("step {step} of {track}", step=str(at.step), track=track)

    def players(self, who: Collection[Population], determiner: str | None = "the", several: bool = True) -> str:
        """Players by role and side: "the players of each side", "the guards of the carriers", "a heron"."""
        alike: dict[object, list[SideId]] = {}
        for side in self.ordered({each.side for each in who}):
            roles = {each.role for each in who if each.side == side}
            same = frozenset((each.role, each.kind) if isinstance(each, Laden) else each for each in roles)
            alike.setdefault(same, []).append(side)
        every = [(frozenset(each.role for each in who if each.side in sides), sides) for sides in alike.values()]
        said = [one for these, sides in every for one in self._of_roles(these, sides, determiner, several)]
        return self.wording.listed(said, "and" if several else "or")

    def _of_roles(
        self, roles: frozenset[Part_of_a_side], sides: list[SideId], determiner: str | None, several: bool
    ) -> Iterable[str]:
        if all(isinstance(role, Laden) for role in roles):
            yield self._with_loads(roles, sides, determiner, several)
            return
        roles = frozenset(without_load(role) for role in roles)
        every = frozenset(self.play.tasks_of(sides[0]))
        if roles == every or roles == {PLAIN}:
            yield self._plain_players(sides, determiner, several, roles != every)
            return
        if PLAIN in roles:
            yield self._plain_players(sides, determiner, several, True)
        for role in self.play.tasks_of(sides[0]):
            if role in roles and role is not PLAIN:
                yield self.of(self.nouns.role(role), several, sides, determiner)

    def _with_loads(
        self, roles: frozenset[Part_of_a_side], sides: list[SideId], determiner: str | None, several: bool
    ) -> str:
        """ "the players with a log", of whichever role."""
        kinds = {role.kind for role in roles if isinstance(role, Laden)}
        load = self.any_of(kinds)
        named = self.nouns.player_of(sides[0]) if len(sides) == 1 and self.me is None else None
        noun = named or self.nouns.noun(PLAYER)
        if named is not None:
            who = self.nouns.with_article(determiner, noun, several)
        else:
            who = self.of(noun, several, sides, determiner)
        return self.say("{player} with {load}", player=who, load=load)

    def _plain_players(self, sides: list[SideId], determiner: str | None, several: bool, without_role: bool) -> str:
        named = self.nouns.player_of(sides[0]) if len(sides) == 1 and self.me is None else None
        noun = named or self.nouns.noun(PLAYER)
        if without_role:
            noun = evolve(
                noun,
                one=self.say("{player} without a role", player=noun.one),
                many=self.say("{player} without a role", player=noun.many),
            )
        if named is not None:
            return self.nouns.with_article(determiner, noun, several)
        return self.of(noun, several, sides, determiner)

    # Amounts

    def time(self, seconds: Fraction) -> str:
        """ "10 seconds", "6 minutes"."""
        if seconds % 60 == 0:
            return self.wording.counted(float(seconds / 60), "minute", "minutes")
        return self.wording.counted(float(seconds), "second", "seconds")

    def metres(self, length: Fraction | float) -> str:
        """ "2 m"; no line ends before the unit."""
        return f"{self.wording.figure(float(length))}\u00a0m" if not self.wording.english else f"{float(length):g} m"

    def counted(self, number: int, noun: Noun) -> str:
        """ "3 lanterns". French counts 0 and 1 as one (Unicode CLDR 44, plural rules, fr: i = 0,1)."""
        several = number != 1 if self.wording.english else number >= 2
        return f"{self.wording.figure(number)} {noun.form(several)}"

    def share(self, share: Fraction) -> str:
        """ "1 in 4"."""
        return self.say("{times} in {of}", times=str(share.numerator), of=str(share.denominator))

    def often(self, per_minute: Fraction | None) -> str:
        """ " twice a minute", or nothing."""
        if per_minute is None:
            return ""
        if self.wording.english and per_minute in (1, 2):
            return " once a minute" if per_minute == 1 else " twice a minute"
        times = self.wording.counted(float(per_minute), "time", "times")
        return f" {self.say('{times} a minute', times=times)}"


def _alike(spots: Collection[Spot]) -> Iterable[list[Spot]]:
    """The places of each name together, whosever they are."""
    found: dict[object, list[Spot]] = {}
    for spot in sorted(spots, key=lambda each: (str(each.of), each.part.value, str(each.owner), str(each.role))):
        found.setdefault((spot.of, spot.part, spot.role), []).append(spot)
    return found.values()
