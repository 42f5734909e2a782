"""The commands of paper: plan. Heavy libraries load only when one of them runs."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

Name = Annotated[str, typer.Argument(help="A game of the library by its name, or a file of rules.")]
With = Annotated[
    list[str] | None,
    typer.Option("--with", help='A modifier, with values behind commas: "add balls, n 3". May be repeated.'),
]
Pupils = Annotated[int | None, typer.Option("--pupils", min=1, max=400, help="How many pupils play.")]
Out = Annotated[Path | None, typer.Option("--out", help="The file to write; without it the answer is printed.")]
InHall = Annotated[str | None, typer.Option("--hall", help="A hall of the library, for walls, doors and run-off.")]
InLanguage = Annotated[str, typer.Option("--language", help="en or fr; names stay as their authors wrote them.")]
InUnits = Annotated[str, typer.Option("--units", help="metric or feet.")]
Force = Annotated[bool, typer.Option("--force", help="Write over a file that is there already.")]
AsJson = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]


def register(app: typer.Typer) -> None:
    """Add the commands to the program."""
    app.command()(plan)


def plan(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    out: Out = None,
    hall: InHall = None,
    units: InUnits = "metric",
    language: InLanguage = "en",
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Draw the floor plan of a game to scale, and say where a hall is too small for it."""
    from compose.terminal.plans import make_plan

    raise typer.Exit(make_plan(name, modifier or [], pupils, out, hall, units, language, force, as_json))
