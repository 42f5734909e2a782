"""What is alike in a list."""

from __future__ import annotations

from collections.abc import Hashable, Iterable


def first_like(values: Iterable[Hashable]) -> list[int]:
    """For each value the place where an equal one first stands."""
    first: dict[Hashable, int] = {}
    return [first.setdefault(value, number) for number, value in enumerate(values)]
