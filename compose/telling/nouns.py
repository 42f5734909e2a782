"""The nouns of a game in a language: singular, plural and gender, by what the sheet and the word lists say of them."""

from __future__ import annotations

from collections.abc import Collection

from compose.telling import french
from compose.telling.wording import GENDER, Wording
from grammar import words as english
from grammar.core.game import Core
from grammar.core.values import AreaId, CatalogueId, KindId, Landmark, RoleId, SideId, Skill, Sort, TrackId
from grammar.frozen import frozen

PLAYER, TEACHER, SIDE = "player", "teacher", "side"


@frozen
class Noun:
    """A noun in both numbers. `alone`: it stands without an article, as "north" does."""

    one: str
    many: str
    feminine: bool = False
    alone: bool = False

    def form(self, several: bool) -> str:
        return self.many if several else self.one


@frozen
class Nouns:
    """The nouns of one game in one language."""

    core: Core
    wording: Wording

    def noun(self, one: str, many: str | None = None) -> Noun:
        """A noun by its English singular; what nobody translated stays as it is written."""
        many = many or english.plural(one)
        if self.wording.english:
            return Noun(one, many)
        known = self.wording.several.get(one, (one, many))
        return Noun(*known, self.wording.known(GENDER, one) == "f")

    def kind(self, kind: KindId) -> Noun:
        """A thing of the kit."""
        return self.noun(kind.key, dict(self.core.plurals).get(kind))

    def like(self, kind: CatalogueId) -> Noun:
        """A thing of the library that a thing is like."""
        return self.noun(kind.key)

    def balls(self, kinds: Collection[KindId]) -> tuple[Noun, ...]:
        """Balls of these kinds: in one word where they are all that there are and of several kinds."""
        every = self.core.play.of_sort(Sort.BALL)
        if len(every) > 1 and set(every) <= set(kinds):
            return (self.noun(self._ball(every)),)
        return tuple(self.kind(kind) for kind in every if kind in kinds)

    def _ball(self, every: Collection[KindId]) -> str:
        """French has two words for a ball, by its size: "balle" where every ball of the game is one."""
        small = not self.wording.english and all(self.kind(kind).feminine for kind in every)
        return "small ball" if small else "ball"

    def role(self, role: RoleId) -> Noun:
        return self.noun(role.key)

    def area(self, area: AreaId | TrackId) -> Noun:
        return self.noun(area.key)

    def landmark(self, place: Landmark) -> Noun:
        """A place of the court; a court of more than two parts has no halves."""
        if place is Landmark.HALF:
            return self.noun("half", "halves") if len(self.core.play.sides) < 3 else self.noun("part")
        return self.noun(place.value)

    def player_of(self, side: SideId) -> Noun | None:
        """A player of a side that is called by its players, "heron"; None for a side such as north."""
        one = dict(self.core.called).get(side)
        return None if one is None else self.noun(one, side.key)

    def side(self, side: SideId) -> Noun:
        """A side by its name. In French a name that is known has an article."""
        known = self.wording.several.get(side.key)
        if self.wording.english or known is None:
            return Noun(side.key, side.key, alone=True)
        return Noun(*known, self.wording.known(GENDER, side.key) == "f")

    def label(self, side: SideId) -> str:
        """A side by its bare name, as it stands on a plan: "herons", "north"."""
        player = self.player_of(side)
        return player.many if player is not None else self.side(side).one

    def skill(self, skill: Skill) -> str:
        return self.wording.known("skill", skill.value) or skill.value

    def with_article(self, determiner: str | None, noun: Noun, several: bool) -> str:
        """ "the lanterns", "a foam ball", "their half"; without a determiner the noun alone."""
        said = noun.form(several)
        if not determiner or noun.alone:
            return said
        if not self.wording.english:
            return f"{french.article(determiner, noun.feminine, several)} {said}"
        if determiner == "a":
            return said if several else english.article(said)
        return f"{determiner} {said}"
