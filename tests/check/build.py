"""A tiny way to write nets by hand in tests: places by name, guards and effects in one line each."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from attrs import evolve

from compose.net.attempt import Attempt
from compose.net.match import ONE_ROUND, Match
from compose.net.net import (
    All,
    AnyOf,
    Assign,
    Bell,
    Comparison,
    Condition,
    Effect,
    End,
    Move,
    Net,
    Not,
    Place,
    Rate,
    Ratio,
    Reaction,
    Rule,
    Shift,
    Transition,
)
from grammar.core.area_kind import AreaKind
from grammar.core.values import SHARED, AreaId, At, Presence, SideId, Spot
from grammar.span import Span
from tests.check.worded import Named, worded

ATTEMPT = Attempt("try", "throw", None, "none")
ALWAYS = All()
ONE = Rate()
NEVER = AnyOf()


def rule(text: str, line: int = 1) -> Rule:
    """A sentence on a line of an invented file."""
    return Rule(text, Span("test.game", line, 1, 1 + len(text)))


class Builder:
    """Collects places by name and gives the net; lines of rules are numbered as they come."""

    def __init__(self, *sides: str) -> None:
        self.sides = sides
        self.places: list[Place] = []
        self.numbers: dict[str, int] = {}
        self.transitions: list[Transition] = []
        self.reactions: list[Reaction] = []
        self.ends: list[End] = []
        self.rules: list[Rule] = []

    def place(
        self,
        name: str,
        start: int,
        capacity: int,
        token: str = "points",
        side: str | None = None,
        *,
        final: bool = False,
    ) -> int:
        self.numbers[name] = len(self.places)
        standing, area = stands(name) if token == "player" else (lies(name, side) if token == "ball" else None, None)
        place = Named(name, token, capacity, start, side, None, final, standing, area, one=name, many=name)
        self.places.append(place)
        return self.numbers[name]

    def rule(self, text: str, stands_by: bool = False) -> Rule:
        written = evolve(rule(text, len(self.rules) + 1), stands_by=stands_by)
        self.rules.append(written)
        return written

    def at_least(self, name: str, bound: int) -> Comparison:
        return Comparison(((1, self.numbers[name]),), ">=", bound)

    def at_most(self, name: str, bound: int) -> Comparison:
        return Comparison(((1, self.numbers[name]),), "<=", bound)

    def exactly(self, name: str, bound: int) -> Comparison:
        return Comparison(((1, self.numbers[name]),), "==", bound)

    def more(self, one: str, other: str) -> Comparison:
        return Comparison(((1, self.numbers[one]), (-1, self.numbers[other])), ">=", 1)

    def move(self, source: str, target: str, by: Rule, amount: int | None = 1) -> Move:
        return Move(self.numbers[source], self.numbers[target], amount, by)

    def shift(self, name: str, by: int, told: Rule) -> Shift:
        return Shift(self.numbers[name], by, told)

    def assign(self, name: str, value: int, told: Rule) -> Assign:
        return Assign(self.numbers[name], value, told)

    def rate(self, *limits: str | Sequence[str], ratios: Iterable[Ratio] = ()) -> Rate:
        """Limits by name; several names in one limit are added up."""
        named = [(limit,) if isinstance(limit, str) else limit for limit in limits]
        return Rate(tuple(tuple(self.numbers[name] for name in limit) for limit in named), tuple(ratios))

    def may(
        self,
        words: str,
        *effects: Effect,
        side: str | None = None,
        forced: bool = False,
        rate: Rate = ONE,
        guard: Condition = ALWAYS,
        rules: Sequence[Rule] = (),
        outcome: str = "always",
        attempt: Attempt = ATTEMPT,
    ) -> None:
        own = tuple(dict.fromkeys([*rules, *(effect.rule for effect in effects)]))
        self.transitions.append(Transition(worded(words), side, forced, attempt, outcome, rate, guard, effects, own))

    def when(self, words: str, guard: Condition, *effects: Effect) -> None:
        own = tuple(dict.fromkeys(effect.rule for effect in effects))
        self.reactions.append(Reaction(worded(words), guard, tuple(effects), own))

    def end(self, words: str, winner: str | None, guard: Condition, told: Rule, way: str = "") -> End:
        self.ends.append(self.result(words, winner, guard, told, way))
        return self.ends[-1]

    @staticmethod
    def result(words: str, winner: str | None, guard: Condition, told: Rule, way: str = "") -> End:
        """An end that is not one of play: a result at the bell."""
        return End(worded(words, way), winner, guard, told)

    def net(
        self,
        bell: Bell | None = None,
        open_ended: bool = False,
        mirrored: tuple[str, ...] = (),
        match: Match = ONE_ROUND,
    ) -> Net:
        return Net(
            "Test game (invented)",
            self.sides,
            tuple(self.places),
            tuple(self.transitions),
            tuple(self.reactions),
            tuple(self.ends),
            bell,
            tuple(self.rules),
            open_ended,
            mirrored,
            match,
        )


__all__ = ["ALWAYS", "ATTEMPT", "NEVER", "Builder", "Not", "Ratio", "rule"]


def lies(name: str, side: str | None) -> At:
    """Where balls are by the name that a test gives to their place."""
    place = name.split("/")[-1].removeprefix(f"{side} ")
    return At(Spot(AreaId(place), SHARED if side is None else SideId(side)))


def stands(name: str) -> tuple[Presence | At, AreaKind | None]:
    """Where players are by the name that a test gives to their place."""
    last = name.split("/")[-1].split()[-1]
    if last in ("queue", "bench"):
        return At(Spot(AreaId(name.split("/")[-1]), SHARED)), AreaKind(last)
    return (Presence.OUT if last == "out" else Presence.PLAYING), None
