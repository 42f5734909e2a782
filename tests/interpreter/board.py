"""What lies where, as a plain table of named counts: no net, no numbers of places, no bounds but zero."""

from __future__ import annotations

from collections.abc import Iterable

Counts = dict[str, int]
State = frozenset[tuple[str, int]]
IN, OUT = "in", "out"
RESULT = "result"


def player(side: str, role: str | None, where: str) -> str:
    """Players of a side and role: in play, out, or in a named area."""
    return f"player/{side}/{role or '-'}/{where}"


def ball(kind: str, spot: tuple[str, str | None]) -> str:
    """Balls of a kind in a spot: its name and the side that it belongs to."""
    return f"ball/{kind}/{spot[0]}/{spot[1] or '-'}"


def target(kind: str, owner: str | None, how: str) -> str:
    """Targets of a kind and owner, standing or down."""
    return f"target/{kind}/{owner or '-'}/{how}"


def step(kind: str, number: int) -> str:
    """Things of a kind on a step of their track."""
    return f"step/{kind}/{number}"


def points(side: str) -> str:
    """The points of a side."""
    return f"points/{side}"


def kept(counts: Counts) -> State:
    """A state that can be looked up: the counts that are not zero."""
    return frozenset((name, count) for name, count in counts.items() if count)


def total(counts: Counts, names: Iterable[str]) -> int:
    """How many there are under all of the names together."""
    return sum(counts.get(name, 0) for name in names)


def move(counts: Counts, source: str, goal: str, most: int | None = 1) -> None:
    """Carry tokens over: as many as asked for (None: all), or as there are."""
    there = counts.get(source, 0)
    taken = there if most is None else min(there, most)
    counts[source] = there - taken
    counts[goal] = counts.get(goal, 0) + taken
