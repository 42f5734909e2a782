"""How far a command looks: the same options for every command that explores, and what they are usually."""

from __future__ import annotations

import math
from typing import Annotated

import typer

USUAL_STATES, USUAL_MEGABYTES = 2_000_000, 1_200.0  # as `compose.check.space.USUAL`, which takes long to load


def finite(value: float | None) -> float | None:
    """An option's number as it is; raises BadParameter for one that nobody can mean, which no range keeps out."""
    if value is not None and not math.isfinite(value):
        raise typer.BadParameter(f"{value} is no number to reckon with.")
    return value


States = Annotated[int, typer.Option("--states", min=1, help="How many situations may be looked at.")]
Memory = Annotated[float, typer.Option("--memory", min=1, callback=finite, help="Megabytes that it may take.")]
Seconds = Annotated[
    float | None,
    typer.Option("--seconds", min=0.01, callback=finite, help="Stop after so long, with what is known by then."),
]
