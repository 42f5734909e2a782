"""Findings of the fit: each computed, with the numbers that it was computed from."""

from __future__ import annotations

from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import NOTHING, Value
from grammar.span import Span


def refused(code: str, title: Value, place: Span, hint: Value, **numbers: float) -> Finding:
    """Why a class cannot play it at all."""
    return _finding(code, Severity.ERROR, title, place, hint, numbers)


def warning(code: str, title: Value, place: Span, hint: Value, **numbers: float) -> Finding:
    """Something to mend before the lesson."""
    return _finding(code, Severity.WARNING, title, place, hint, numbers)


def note(code: str, title: Value, place: Span, hint: Value = NOTHING, **numbers: float) -> Finding:
    """Something to know."""
    return _finding(code, Severity.NOTE, title, place, hint, numbers)


def _finding(
    code: str, severity: Severity, title: Value, place: Span, hint: Value, numbers: dict[str, float]
) -> Finding:
    told = tuple((name, round(float(number), 3)) for name, number in numbers.items())
    return spoken(code, severity, title, place, hint, basis=Basis.COMPUTED, numbers=told)
