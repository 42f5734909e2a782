"""How far a command looks: the same options for every command that explores, and what they are usually."""

from __future__ import annotations

from typing import Annotated

import typer

USUAL_STATES, USUAL_MEGABYTES = 2_000_000, 1_200.0  # as `compose.check.space.USUAL`, which takes long to load

States = Annotated[int, typer.Option("--states", min=1, help="How many situations may be looked at.")]
Memory = Annotated[float, typer.Option("--memory", min=1, help="Megabytes that looking at them may take.")]
Seconds = Annotated[
    float | None, typer.Option("--seconds", min=0.01, help="Stop after so long, with what is known by then.")
]
