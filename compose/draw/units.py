"""Metres or feet: lengths written in metres turned into feet, wherever they stand on a card or a plan.

Rules, floors and forecasts stay in metres. Only what is shown is turned, so that a plan in feet is the same
plan: a court is never redrawn to round feet.
"""

from __future__ import annotations

import re
from typing import Any, TypeVar

from attrs import fields_dict, has

from compose.draw.signs.shapes import Drawing, Label
from grammar.frozen import evolve, frozen

# Exactly: the international foot, agreed in 1959 by six standards laboratories (US Federal Register,
# "Refinement of values for the yard and the pound", 1 July 1959).
FOOT_M = 0.3048
INCH_CM = 2.54
_LENGTH = re.compile(r"(?<![\w.,])(\d+(?:[.,]\d+)?)[ \u00a0](m|cm)(?![\w²])")
Shown = TypeVar("Shown")


@frozen
class Units:
    """How lengths are shown."""

    name: str
    feet: bool = False


METRIC = Units("metric")
UNITS = {"metric": METRIC, "feet": Units("feet", True)}


def length_words(metres: float) -> str:
    """A length in feet: to half a foot under 20 ft, to a whole foot above (our choice: a teacher paces it out)."""
    feet = metres / FOOT_M
    shown = round(feet * 2) / 2 if feet < 20 else round(feet)
    return f"{shown:g} ft"


def _turned(match: re.Match[str]) -> str:
    number = float(match.group(1).replace(",", "."))
    if match.group(2) == "cm":
        return f"{round(number / INCH_CM):g} in"
    return length_words(number)


def in_units(shown: Shown, units: Units) -> Shown:
    """A text, or any value made of texts, with its lengths in the units; drawings stay to scale."""
    turned: Shown = _through(shown) if units.feet else shown
    return turned


def _through(shown: Any) -> Any:
    if isinstance(shown, str):
        return _LENGTH.sub(_turned, shown)
    if isinstance(shown, tuple):
        return tuple(_through(part) for part in shown)
    if isinstance(shown, Drawing):
        shapes = tuple(
            evolve(each, text=_through(each.text)) if isinstance(each, Label) else each for each in shown.shapes
        )
        return evolve(shown, description=_through(shown.description), shapes=shapes)
    if has(type(shown)):
        return evolve(shown, **{name: _through(getattr(shown, name)) for name in fields_dict(type(shown))})
    return shown
