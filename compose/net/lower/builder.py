"""The net while it is being built: places by key, transitions, rules."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

import attrs
from attrs import define, field

from compose.net.lower.harmless import harmless
from compose.net.lower.lives import Kept, where_kept
from compose.net.net import Comparison, Place, Reaction, Rule, Transition
from compose.staging.floor.values import Floor
from grammar.core.game import Core, Play
from grammar.core.play import Lines
from grammar.core.rules import Go, Own, Person, Swap
from grammar.core.schedule import moments_s
from grammar.core.values import SAME, At, Population, Presence, SideId, Spot
from grammar.finding import Finding
from grammar.span import Span

Key = tuple[object, ...]


@define
class Builder:
    """Collects the pieces of one net. Places are made when first asked for, with their start count 0.

    `whereabouts` are the places where players of a population come to wait, `reached` those into which they may run as
    they play: who is there is in play.
    """

    core: Core
    players: Mapping[SideId, int]
    floor: Floor
    whereabouts: frozenset[tuple[Population, Spot]]
    reached: frozenset[tuple[Population, Spot]] = frozenset()
    numbers: dict[Key, int] = field(factory=dict)
    places: list[Place] = field(factory=list)
    transitions: list[Transition] = field(factory=list)
    reactions: list[Reaction] = field(factory=list)
    rules: dict[int, Rule] = field(factory=dict)
    findings: list[Finding] = field(factory=list)
    result_place: int | None = None
    times_s: tuple[Fraction, ...] = field(init=False)
    harmless: frozenset[int] = field(init=False)
    kept: Kept = field(init=False)

    @times_s.default
    def _times_s(self) -> tuple[Fraction, ...]:
        """The moments of the clock, which many ask for."""
        return moments_s(self.core.play)

    @harmless.default
    def _harmless(self) -> frozenset[int]:
        return harmless(self.core.play)

    @kept.default
    def _kept(self) -> Kept:
        return where_kept(self.core.play)

    @property
    def play(self) -> Play:
        return self.core.play

    def number(self, key: Key) -> int | None:
        """The place's number in the net, None where there is no such place."""
        return self.numbers.get(key)

    def add_place(self, key: Key, place: Place) -> int:
        """The number of the place of that key, made now if it is new."""
        if key not in self.numbers:
            self.numbers[key] = len(self.places)
            self.places.append(place)
        return self.numbers[key]

    def start(self, place: int, tokens: int) -> None:
        """Put tokens into a place for the set-up."""
        before = self.places[place]
        self.places[place] = attrs.evolve(before, start=before.start + tokens)

    def rule(self, lines: Lines) -> Rule:
        """The rule that a line is; lines taken for granted are no rules of the game's own."""
        line = self.core.lines[lines[0]]
        tie = self.play.tie
        stands_by = (tie is not None and lines[0] in tie.lines) or lines[0] in self.harmless
        rule = Rule(line.words, line.span, stands_by)
        if not line.granted:
            self.rules.setdefault(lines[0], rule)
        return rule

    def counted_as(self, who: Population, standing: Presence | At) -> Presence | At:
        """Among whom somebody who stands so is counted."""
        in_play = isinstance(standing, At) and (who, standing.spot) in self.reached
        return Presence.PLAYING if in_play else standing

    @property
    def sides_change(self) -> bool:
        """Whether any rule lets a player join another side, for good or while two change: one may have everybody."""
        return any(
            (isinstance(effect, Go) and effect.becomes.side is not SAME)
            or (isinstance(effect, Swap) and effect.other in (Person.OBJECT, Person.KEEPER, Person.CATCHER))
            for rule in self.play.rules
            for effect in rule.effects
        )

    @property
    def owners_change(self) -> bool:
        """Whether any rule lets a target join another side."""
        return any(isinstance(effect, Own) for rule in self.play.rules for effect in rule.effects)


def at_least(places: Iterable[int], bound: int = 1) -> Comparison:
    """The sum of the places is at least the bound."""
    return Comparison(tuple((1, place) for place in places), ">=", bound)


def at_most(places: Iterable[int], bound: int) -> Comparison:
    """The sum of the places is at most the bound."""
    return none_in(places) if bound == 0 else Comparison(tuple((1, place) for place in places), "<=", bound)


def by_itself(place: Span) -> Rule:
    """No line's own doing: that time passes is no effect of what is said of it there."""
    return Rule("", place)


def none_in(places: Iterable[int]) -> Comparison:
    """All of the places are empty."""
    return Comparison(tuple((1, place) for place in places), "==", 0)
