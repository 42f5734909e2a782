"""A game as the interpreter reads it: who is on which side, what a phrase means, what is where at the start."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import cast

from grammar.game import Game, GameKit, GameTrack
from grammar.meanings import (
    AgentMeaning,
    CategoryMeaning,
    KitMeaning,
    MateMeaning,
    Meaning,
    PlaceMeaning,
    PlayerMeaning,
    side_named,
)
from grammar.sentences import when
from grammar.sentences.base import AnySide, Node, Np, Owner, OwnerName, SideNamed, SideOf, SideRef
from grammar.sentences.sides import PlacingOnStep
from grammar.sentences.space import Area
from grammar.tree import GameSheet, Sentence

Spot = tuple[str, str | None]


class Sheet:
    """One game for so many players of each side, with the sheet of what is taken for granted."""

    def __init__(self, game: Game, granted: GameSheet, players: Mapping[str, int]) -> None:
        self.game = game
        self.granted = granted
        self.players = players
        self.sides = tuple(side.name for side in game.sides)
        self._said: dict[tuple[type[Node], bool], tuple[Node, ...]] = {}

    def said(self, kind: type[Sentence], granted: bool = False) -> tuple[Sentence, ...]:
        """All sentences of a kind: those of the sheet itself, or those taken for granted."""
        if (kind, granted) not in self._said:
            sections = ("set-up", "play", "when", "finish")
            source = self.granted if granted else self.game
            self._said[kind, granted] = tuple(each for name in sections for each in source.all_of(name, kind))
        return cast("tuple[Sentence, ...]", self._said[kind, granted])

    def areas(self) -> tuple[Area, ...]:
        """The places that the sheet names."""
        return tuple(self.game.all_of("space", Area))

    def others(self, side: str) -> tuple[str, ...]:
        """The other sides; a side that is alone plays against itself."""
        return tuple(each for each in self.sides if each != side) or (side,)

    def roles(self, side: str) -> tuple[str | None, ...]:
        """No role, and every role that players of the side may have."""
        return (None, *(role.name for role in self.game.roles if role.side in (None, side)))

    def lines(self, meaning: Meaning, *categories: str) -> Iterator[GameKit]:
        """The kit lines that a name stands for."""
        for line in self.game.kit:
            if line.category in categories and (
                (isinstance(meaning, KitMeaning) and meaning.key == line.name)
                or (isinstance(meaning, CategoryMeaning) and meaning.category == line.category)
            ):
                yield line

    def is_ball(self, phrase: Np) -> bool:
        """Whether a phrase speaks of balls."""
        meaning = self.game.meaning(phrase.name)
        return isinstance(meaning, KitMeaning | CategoryMeaning) and meaning.category == "ball"

    def track(self, kind: str) -> tuple[GameTrack, int] | None:
        """The track on which things of a kind stand, and the step they begin on."""
        for placing in self.said(PlacingOnStep):
            if getattr(self.game.meaning(placing.what.name), "key", None) == kind:
                track = self.game.track_named(placing.track.name.text)
                assert track is not None
                return track, placing.step.whole
        return None

    def may_own(self, line: GameKit) -> tuple[str | None, ...]:
        """Who has things of a kit line, now or later."""
        first = self.first_owners(line)
        taken = any(isinstance(each, when.TakenOver) for rule in self.said(when.When) for each in rule.consequences)
        return (*first, *(side for side in self.sides if side not in first)) if taken else first

    def first_owners(self, line: GameKit) -> tuple[str | None, ...]:
        """Who has things of a kit line at the start."""
        return self.sides if line.owner == "each" else (line.owner if line.owner in self.sides else None,)

    def number(self, line: GameKit, owner: str | None) -> int:
        """How many things of a kit line one owner has at the start."""
        return line.count * (self.players[owner] if line.per_player and owner is not None else 1)

    def number_in_all(self, line: GameKit) -> int:
        """How many things of a kit line there are."""
        return sum(self.number(line, owner) for owner in self.first_owners(line))

    def side_in(self, phrase: AnySide, own: str, other: str, parts: Mapping[str, str]) -> str:
        """The one side that a phrase means; `parts` says who acted, caught and keeps."""
        if isinstance(phrase, SideOf):
            return self.possessor(phrase.possessive, parts) or own
        if isinstance(phrase, SideNamed):
            return side_named(self.game.meaning(phrase.name)) or own
        return other if isinstance(phrase, SideRef) and phrase.other else own

    def possessor(self, word: str, parts: Mapping[str, str]) -> str | None:
        """The side of "the thrower's", "the catcher's", "north's"."""
        meaning = self.game.vocabulary.get(word.removesuffix("'s"))
        if isinstance(meaning, AgentMeaning):
            return parts.get(meaning.part)
        return side_named(meaning)

    def whose(self, phrase: Np, own: str, toward: str, parts: Mapping[str, str] | None = None) -> str:
        """The side a thing or place belongs to. Without an owner it is that of the side it was sent to."""
        against = toward if toward != own else self.others(own)[0]
        if phrase.possessive:
            return self.possessor(phrase.possessive, parts or {}) or own
        if isinstance(phrase.owner, OwnerName):
            return side_named(self.game.vocabulary.get(phrase.owner.name.text)) or own
        if isinstance(phrase.owner, Owner):
            return against if phrase.owner.other else own
        if phrase.other:
            return against
        return own if phrase.determiner in ("their", "its", "each", "every") else toward

    def spot(
        self, preposition: str | None, phrase: Np, own: str, toward: str, parts: Mapping[str, str] | None = None
    ) -> Spot:
        """Where balls lie that are in a place of the court."""
        meaning = self.game.meaning(phrase.name)
        assert isinstance(meaning, PlaceMeaning)
        side = self.whose(phrase, own, toward, parts)
        if meaning.place == "half":
            return self.at_hand(side)
        if meaning.place in ("middle", "middle line"):
            return "middle", None
        if meaning.place == "court":
            return "court", None
        if meaning.built_in:
            return f"{preposition or 'at'} the {meaning.place}", side
        area = self.game.area_named(meaning.place)
        assert area is not None
        return area.name, side if area.each else None

    def at_hand(self, side: str) -> Spot:
        """Where the balls lie that a side can play: its half, or anywhere on an undivided court."""
        return ("half", side) if self.game.halved else ("court", None)

    def area(self, phrase: Np) -> str:
        """Where players are who are in a place: a named area, or simply in play."""
        meaning = self.game.meaning(phrase.name)
        return meaning.place if isinstance(meaning, PlaceMeaning) and not meaning.built_in else "in"

    def is_mate(self, phrase: Np) -> bool:
        """Whether a phrase means a team-mate of who acts."""
        return isinstance(self.game.meaning(phrase.name), MateMeaning)

    def players_meant(self, phrase: Np) -> PlayerMeaning | None:
        """Which players a phrase means, None where it means something else."""
        meaning = self.game.meaning(phrase.name)
        return meaning if isinstance(meaning, PlayerMeaning) else None
