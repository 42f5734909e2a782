"""How a sentence speaks of sides: "the other side" where it holds for each side alike, else by name.

A point of view is a value; a sentence changes it with `about` and `calling`.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from enum import Enum
from typing import Self

from compose.telling.nouns import SIDE, Noun, Nouns
from compose.telling.wording import Wording
from grammar.core.ends import left_win
from grammar.core.game import Core, Play
from grammar.core.play import Aim
from grammar.core.values import (
    Owner,
    Population,
    SideId,
    Spot,
)
from grammar.frozen import evolve, field, frozen

UsualDistance = Callable[[Population, Aim, frozenset[Spot]], float]


class Subject(Enum):
    """Who a sentence is about, so that "their" and "its" can be said of it: English and French do it differently."""

    PLAYERS = ("their", "their")
    PLAYER = ("their", "its")
    SIDE = ("its", "its")


@frozen
class SideVoice:
    """The point of view of a sentence.

    `me` and `other` are the sides for which a sentence stands that holds for each side alike; without `me` sides are
    named. `first` is how `me` is called, `rest` how all others are, `whole` how all are; of several others `other` is
    "that" side once it was spoken of. `called` is what sides are called in this sentence alone. `near` is the side of
    whom "their" or "its" can be said. `usual_m` gives the usual distance of who aims at what, where it is known.
    """

    core: Core
    wording: Wording
    me: SideId | None = None
    other: SideId | None = None
    first: str = "each"
    rest: str = "every"
    whole: str | None = None
    near: SideId | None = None
    subject: Subject = Subject.PLAYERS
    called: tuple[tuple[SideId, str], ...] = ()
    usual_m: UsualDistance | None = field(default=None, eq=False)
    nouns: Nouns = field(init=False, eq=False, repr=False)

    def __attrs_post_init__(self) -> None:
        object.__setattr__(self, "nouns", Nouns(self.core, self.wording))

    @property
    def play(self) -> Play:
        return self.core.play

    def say(self, pattern: str, feminine: bool = False, /, **fields: str) -> str:
        return self.wording.say(pattern, feminine, **fields)

    def about(self, side: SideId | None, subject: Subject) -> Self:
        """The same where "their" or "its" is of a side."""
        return evolve(self, near=side, subject=subject)

    def calling(self, first: str, rest: str = "every") -> Self:
        """The same with other words for the side for which a sentence stands: "each", "a", and for those against it."""
        return evolve(self, first=first, rest=rest)

    def ordered(self, owners: Iterable[Owner]) -> list[SideId]:
        """The sides among owners in the order of the sheet."""
        found = set(owners)
        return [side for side in self.play.side_ids if side in found]

    # Sides

    def sides(self, owners: Collection[Owner], last: str = "and") -> str:
        """Sides as who does something or whose something is: "the other side", "north and south"."""
        return self.wording.listed(self._sides(self.ordered(owners)), "or" if last == "or" else "and")

    def _sides(self, sides: list[SideId]) -> list[str]:
        called = dict(self.called)
        if called or self.me is None:
            return [called.get(side) or self.name(side) for side in sides]
        if len(sides) == len(self.play.sides):
            return [self._any()]
        others = [side for side in sides if side != self.me]
        said = [self._side(self.first, False)] if self.me in sides else []
        if len(others) == len(self.play.sides) - 1:
            return [*said, self._side("the" if len(others) == 1 else self.rest, True)]
        return [*said, *dict.fromkeys(self._that() if side == self.other else self._further() for side in others)]

    def _further(self) -> str:
        """A side beside the two for which a sentence stands that holds for each pair of sides."""
        return self.say("the third side" if len(self.play.sides) == 3 else "each further side")

    def _that(self) -> str:
        """One of several others: "another side" where it is first spoken of, then "that side"."""
        return self._side("a", True) if self.rest == "a" else self._side("that", False)

    def _any(self) -> str:
        return self._side(self.whole or ("either" if len(self.play.sides) == 2 else "any"), False)

    def _side(self, determiner: str, other: bool) -> str:
        noun = self.nouns.noun(SIDE)
        if self.wording.english and determiner == "a" and other:
            return f"another {noun.one}"
        if self.wording.english:
            return f"{determiner} {'other ' if other else ''}{noun.one}"
        if determiner in ("either", "any"):
            return self.say("any side")
        known = "each" if determiner == "every" else determiner
        text = Noun(f"autre {noun.one}", noun.many, noun.feminine) if other else noun
        return self.nouns.with_article(known, text, False)

    def name(self, side: SideId) -> str:
        """A side by its name: "the herons", "north"."""
        player = self.nouns.player_of(side)
        return self.nouns.with_article("the", player or self.nouns.side(side), player is not None)

    def many(self, owners: Collection[Owner]) -> bool:
        """Whether the verb of these sides is plural."""
        sides = self.ordered(owners)
        if self.me is not None:
            return len(sides) == 2 and len(self.play.sides) > 2 and self.me in sides
        return len(sides) > 1 or any(self.nouns.player_of(side) for side in sides)

    def does(self, owners: Collection[Owner], one: str, several: str, **fields: str) -> str:
        """What sides do, with the verb in their number: "it" where they have been spoken of."""
        if self.near is not None and set(owners) == {self.near}:
            return self.say(several if self.many(owners) else one, side=self.it(), **fields)
        return self.say(several if self.many(owners) else one, side=self.sides(owners), **fields)

    def wins(self, side: SideId) -> str:
        """Who wins: where the players of a side play each for themselves it is one of them, or those
        who are left."""
        if any(each.id == side and each.solo for each in self.play.sides):
            one, left = "one of {side} wins", "those left of {side} win"
            return self.say(left if left_win(side, self.play.ends, self.play.bell) else one, side=self.sides([side]))
        return self.does([side], "{side} wins", "{side} win")

    def it(self) -> str:
        """What the side spoken of is called: "it", "they", "their side"."""
        assert self.near is not None
        if self.subject is not Subject.SIDE:
            return self.nouns.with_article(self._own(), self.nouns.noun(SIDE), False)
        if self.wording.english:
            return "they" if self.many({self.near}) else "it"
        if self.me is not None:
            return self.say("it (a side)")
        feminine = (self.nouns.player_of(self.near) or self.nouns.side(self.near)).feminine
        return self.say("they (a side)" if self.many({self.near}) else "it (a named side)", feminine)

    def _own(self) -> str:
        if self.subject is Subject.SIDE and self.near is not None and self.many({self.near}):
            return "their"
        return self.subject.value[0 if self.wording.english else 1]
