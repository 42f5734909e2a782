"""The commands of the forecast: forecast, replay, export. Heavy libraries load only when one of them runs."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.typed.looking_options import USUAL_MEGABYTES, USUAL_STATES, Memory, Seconds, States, finite
from compose.terminal.typed.options import AsJson, ClassName, InHall, Language, Name, Pupils, With
from compose.terminal.typed.share_options import ShelfFolder

Seed = Annotated[int, typer.Option("--seed", min=0, help="Rounds played at random are the same for the same seed.")]


def register(app: typer.Typer) -> None:
    """Add the commands to the program."""
    app.command()(forecast)
    app.command()(replay)
    app.command()(export)


def forecast(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    minutes: Annotated[
        float | None,
        typer.Option("--minutes", callback=finite, min=5, max=300, help="How long the lesson is on the timetable."),
    ] = None,
    absent: Annotated[int, typer.Option("--absent", min=0, max=400, help="How many pupils are away today.")] = 0,
    states: States = USUAL_STATES,
    seconds: Seconds = None,
    memory: Memory = USUAL_MEGABYTES,
    rounds: Annotated[
        int, typer.Option("--rounds", min=100, max=1_000_000, help="Rounds to play where the game is too large.")
    ] = 4_000,
    seed: Seed = 1,
    seen: Annotated[bool, typer.Option("--seen", help="Weigh in the rounds that your shelf keeps.")] = False,
    of_class: Annotated[str, typer.Option("--of-class", help="Only those of this class, such as 5a.")] = "",
    shelf: ShelfFolder = None,
    details: Annotated[bool, typer.Option("--details", help="Tell what it rests on and how it was found.")] = False,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Forecast a game: how long a round lasts, who wins, who waits, how many turns a pupil gets."""
    from compose.check.space import Budget
    from compose.forecast.rounds.simulate import Play
    from compose.terminal.forecasting import Asked, show_forecast
    from compose.terminal.sharing.observed_rounds import Kept
    from compose.terminal.typed.classes import Who

    kept = Kept(shelf, of_class) if seen or of_class else None
    asked = Asked(absent, Budget(states, memory), Play(rounds, seed), kept, seconds, details, language)
    who = Who(pupils, class_name, hall, lesson_min=minutes)
    raise typer.Exit(show_forecast(name, modifier or [], who, asked, as_json))


def replay(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    finding: Annotated[
        str | None, typer.Option("--finding", help="The code of a finding of the check, such as C-stall.")
    ] = None,
    seed: Seed = 1,
    whole: Annotated[bool, typer.Option("--all", help="Tell the attempts without effect too.")] = False,
    states: States = USUAL_STATES,
    seconds: Seconds = None,
    memory: Memory = USUAL_MEGABYTES,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Tell a line of play step by step: how a finding comes about, or a round played at random."""
    from compose.check.space import Budget
    from compose.terminal.replaying import show_replay
    from compose.terminal.typed.classes import Who

    budget, who = Budget(states, memory), Who(pupils, class_name, hall)
    raise typer.Exit(show_replay(name, modifier or [], who, finding, seed, whole, budget, seconds, language, as_json))


def export(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    out: Annotated[
        Path | None, typer.Option("--out", help="The file to write; without it the answer is printed.")
    ] = None,
    force: Annotated[bool, typer.Option("--force", help="Write over a file that is there already.")] = False,
    as_json: AsJson = False,
) -> None:
    """Write a game as a model in the PRISM language, for a model checker to look at."""
    from compose.terminal.exporting import show_export
    from compose.terminal.typed.classes import Who

    raise typer.Exit(show_export(name, modifier or [], Who(pupils, class_name, hall), out, force, as_json))
