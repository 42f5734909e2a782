"""The net while it is being built: places by key, transitions, rules."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import attrs
from attrs import define, field

from compose.net.net import Comparison, End, Place, Reaction, Rule, Transition
from compose.staging.floor.values import Floor
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.sentences import finish
from grammar.sentences.base import Node
from grammar.span import Span

Key = tuple[str | None, ...]


@define
class Builder:
    """Collects the pieces of one net. Places are made when first asked for, with their start count 0."""

    game: Game
    players: Mapping[str, int]
    granted_file: str
    floor: Floor
    places: dict[Key, Place] = field(factory=dict)
    transitions: list[Transition] = field(factory=list)
    reactions: list[Reaction] = field(factory=list)
    ends: list[End] = field(factory=list)
    rules: dict[Span, Rule] = field(factory=dict)
    findings: list[Finding] = field(factory=list)

    @property
    def side_names(self) -> tuple[str, ...]:
        return tuple(side.name for side in self.game.sides)

    def others(self, side: str) -> tuple[str, ...]:
        """The sides against a side."""
        return tuple(name for name in self.side_names if name != side)

    def index(self, key: Key) -> int:
        """The place's number in the net."""
        if key not in self.places:
            raise KeyError(f"no such place: {key}")
        return list(self.places).index(key)

    def add_place(self, key: Key, place: Place) -> int:
        """The number of the place of that key, made now if it is new."""
        self.places.setdefault(key, place)
        return list(self.places).index(key)

    def found(self, prefix: Key) -> tuple[int, ...]:
        """The numbers of all places whose key begins so."""
        return tuple(n for n, key in enumerate(self.places) if key[: len(prefix)] == prefix)

    def start(self, key: Key, tokens: int) -> None:
        """Put tokens into a place for the set-up."""
        place = self.places[key]
        self.places[key] = attrs.evolve(place, start=place.start + tokens)

    def rule(self, sentence: Node) -> Rule:
        """The rule that a sentence is; sentences taken for granted are no rules of the game's own."""
        rule = Rule(sentence.words(), sentence.span, isinstance(sentence, finish.BothAtOnce))
        if self.own(sentence):
            self.rules.setdefault(sentence.span, rule)
        return rule

    def own(self, sentence: Node) -> bool:
        """Whether the sentence is the game's own, and not taken for granted."""
        return sentence.span.file != self.granted_file

    def warn(self, code: str, title: str, sentence: Node, hint: str) -> None:
        """Something that the net cannot take over as it is written."""
        self.findings.append(Finding(code, Severity.ERROR, title, sentence.span, hint))


def at_least(places: Iterable[int], bound: int = 1) -> Comparison:
    """The sum of the places is at least the bound."""
    return Comparison(tuple((1, place) for place in places), ">=", bound)


def none_in(places: Iterable[int]) -> Comparison:
    """All of the places are empty."""
    return Comparison(tuple((1, place) for place in places), "==", 0)
