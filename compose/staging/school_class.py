"""A class: its pupils and their ages, its hall, its time, and what lies in the cupboard."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from grammar.frozen import field, frozen
from grammar.span import Span, nowhere

if TYPE_CHECKING:
    from library import Hall

MOST_PUPILS = 400


@frozen
class InCupboard:
    """So many of a thing; `like` is its name in the library's kit."""

    name: str
    count: int
    like: str
    span: Span = field(eq=False)


@frozen
class SchoolClass:
    """A class as its sheet says. `ready_min` has what the teacher measured, by "setting up", "explaining",
    "clearing away"; what is None nobody has said."""

    name: str
    pupils: int
    ages_years: tuple[float, float] | None
    hall: Hall | None
    lesson_min: float | None
    cupboard: tuple[InCupboard, ...]
    ready_min: Mapping[str, float]
    about: str
    span: Span = field(eq=False)

    @property
    def lists_kit(self) -> bool:
        """Whether the sheet says at all what lies in the cupboard."""
        return bool(self.cupboard)


def some_class(pupils: int) -> SchoolClass:
    """So many pupils of whom nothing else is said."""
    return SchoolClass("", pupils, None, None, None, (), {}, "", nowhere())
