"""The commands of paper: plan, booklet, strip, lesson. Heavy libraries load only when one of them runs."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.typed.looking_options import USUAL_MEGABYTES, USUAL_STATES, Memory, States, finite
from compose.terminal.typed.options import AsJson, ClassName, Force, InHall, Name, Out, Pupils, With, text_of

BOOKLET_STATES = 200_000  # of each of many games: a tenth of what one game gets

Names = Annotated[list[str] | None, typer.Argument(help="Games by name or file; without any, the whole library.")]
Paper = Annotated[str, typer.Option("--paper", help="a4 or letter.")]
InLanguage = Annotated[str, typer.Option("--language", help="en or fr; what has no French stays as written.")]
InUnits = Annotated[str, typer.Option("--units", help="metric or feet.")]


def register(app: typer.Typer) -> None:
    """Add the commands to the program."""
    app.command()(plan)
    app.command()(booklet)
    app.command()(strip)
    app.command()(lesson)


def plan(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    out: Out = None,
    hall: InHall = None,
    units: InUnits = "metric",
    language: InLanguage = "en",
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Draw the floor plan of a game to scale, and say where a hall is too small for it."""
    from compose.terminal.plans import make_plan
    from compose.terminal.typed.classes import Who

    raise typer.Exit(
        make_plan(name, modifier or [], Who(pupils, class_name, hall), out, units, language, force, as_json)
    )


def booklet(
    out: Annotated[Path, typer.Option("--out", help="The PDF file to write.")],
    names: Names = None,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    title: Annotated[
        str, typer.Option("--title", callback=text_of, help="What stands on its first page.")
    ] = "Hall games",
    paper: Paper = "a4",
    units: InUnits = "metric",
    language: InLanguage = "en",
    large: Annotated[bool, typer.Option("--large", help="Large print, each card on two pages.")] = False,
    checked: Annotated[bool, typer.Option("--checked", help="Check each game, and say so on its card.")] = False,
    states: States = BOOKLET_STATES,
    memory: Memory = USUAL_MEGABYTES,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Bind the cards of many games into one PDF with a contents page."""
    from compose.check.space import Budget
    from compose.terminal.booklets import make_booklet
    from compose.terminal.typed.classes import Who

    budget, who = Budget(states, memory) if checked else None, Who(pupils, class_name, hall)
    raise typer.Exit(
        make_booklet(
            names or [], modifier or [], who, out, title, paper, units, language, large, budget, force, as_json
        )
    )


def strip(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    out: Out = None,
    finding: Annotated[
        str | None, typer.Option("--finding", help="Show the line of play behind this finding of the check.")
    ] = None,
    seed: Annotated[int, typer.Option("--seed", min=0, help="The same seed gives the same round.")] = 1,
    pictures: Annotated[int, typer.Option("--pictures", min=4, max=8, help="How many pictures at most.")] = 8,
    language: InLanguage = "en",
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Show a round in four to eight small plans: an SVG strip, or an HTML page that plays it step by step."""
    from compose.check.space import Budget
    from compose.terminal.strips import make_strip
    from compose.terminal.typed.classes import Who

    budget, who = Budget(states, memory), Who(pupils, class_name, hall)
    raise typer.Exit(
        make_strip(name, modifier or [], who, out, finding, budget, seed, pictures, language, force, as_json)
    )


def lesson(
    names: Annotated[list[str], typer.Argument(help="The games of the lesson in their order, by name or file.")],
    modifier: Annotated[
        list[str] | None,
        typer.Option("--with", help='A modifier for all games, or with its number for one: "2: add balls, n 3".'),
    ] = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    minutes: Annotated[
        float | None,
        typer.Option("--minutes", callback=finite, min=5, max=300, help="How long the lesson is on the timetable."),
    ] = None,
    out: Out = None,
    title: Annotated[
        str, typer.Option("--title", callback=text_of, help="What stands at the top.")
    ] = "A lesson of games",
    paper: Paper = "a4",
    units: InUnits = "metric",
    language: InLanguage = "en",
    quick: Annotated[bool, typer.Option("--quick", help="Take the games' own clocks; forecast nothing.")] = False,
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Plan a lesson of several games: warm-up to cool-down in its minutes, and the kit to lay out first."""
    from compose.check.space import Budget
    from compose.terminal.lessons import make_lesson
    from compose.terminal.typed.classes import Who

    budget, who = Budget(states, memory), Who(pupils, class_name, hall, lesson_min=minutes)
    raise typer.Exit(
        make_lesson(names, modifier or [], who, out, title, paper, units, language, quick, budget, force, as_json)
    )
