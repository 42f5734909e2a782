"""Conditions on a marking of the net."""

from __future__ import annotations

from typing import Union

from grammar.frozen import frozen

Terms = tuple[tuple[int, int], ...]  # each (coefficient, place), for the sum of coefficient * count[place]


@frozen
class Comparison:
    """The sum over the terms, relation, bound.

    The relation is one of "<=", "==", ">=".
    """

    terms: Terms
    relation: str
    bound: int


@frozen
class All:
    """Every part holds; with no parts it always holds."""

    parts: tuple[Condition, ...] = ()


@frozen
class AnyOf:
    """At least one part holds; with no parts it never holds."""

    parts: tuple[Condition, ...] = ()


@frozen
class Not:
    """The part does not hold."""

    part: Condition


Condition = Union[Comparison, All, AnyOf, Not]
