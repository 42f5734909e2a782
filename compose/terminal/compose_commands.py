"""The commands of composing: differences, suggestions, the fit to a class, the table of modifiers, remix files."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.typed.looking_options import USUAL_MEGABYTES, USUAL_STATES, Memory, Seconds, States, finite
from compose.terminal.typed.options import AsJson, ClassName, Force, InHall, Language, Name, Out, Pupils, With

Quick = Annotated[bool, typer.Option("--quick", help="Leave out the forecast.")]


def register(app: typer.Typer) -> None:
    """Add the commands to the program."""
    for command in (differ, suggest, fit, mix, keep, carry, lineage):
        app.command()(command)


def differ(
    one: Name,
    other: Annotated[str | None, typer.Argument(help="A second game; without it, the game with modifiers.")] = None,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    quick: Quick = False,
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    as_json: AsJson = False,
) -> None:
    """Say in plain words how two games, or a game and its remix, differ: players, kit, space, play, forecast."""
    from compose.check.space import Budget
    from compose.terminal.differing import show_difference
    from compose.terminal.typed.classes import Who

    who = Who(pupils, class_name, hall)
    raise typer.Exit(show_difference(one, other, modifier or [], who, quick, Budget(states, memory), as_json))


def suggest(
    name: Name,
    modifier: With = None,
    skill: Annotated[str | None, typer.Option("--skill", help='Players try this skill, such as "kick".')] = None,
    ages: Annotated[str | None, typer.Option("--ages", help='For these ages, such as "9 to 11".')] = None,
    pupils: Pupils = None,
    court: Annotated[str | None, typer.Option("--court", help='A court of at most so many m: "15 by 8".')] = None,
    at_most: Annotated[
        list[str] | None, typer.Option("--at-most", help='At most so much kit, such as "3 balls". May be repeated.')
    ] = None,
    round_min: Annotated[str | None, typer.Option("--round", help='Mean length of a round in min: "4 to 6".')] = None,
    wait: Annotated[
        float | None, typer.Option("--wait", callback=finite, min=0.01, help="The longest mean wait, in min.")
    ] = None,
    turns: Annotated[
        float | None, typer.Option("--turns", callback=finite, min=0.01, help="Turns of a pupil in a minute.")
    ] = None,
    nobody_out: Annotated[bool, typer.Option("--nobody-out", help="Nobody is out for the round.")] = False,
    class_name: Annotated[str | None, typer.Option("--class", help="A class that is to play it.")] = None,
    hall: InHall = None,
    mend: Annotated[bool, typer.Option("--mend", help="With wishes: clear what the check finds, too.")] = False,
    tries: Annotated[int, typer.Option("--tries", min=1, help="How many remixes to look at.")] = 300,
    states: States = USUAL_STATES,
    seconds: Seconds = None,
    most: Annotated[int, typer.Option("--most", min=1, max=20, help="How many sets to show.")] = 3,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Find the smallest sets of modifiers that mend a game or meet wishes, and say what each bought."""
    from compose.fit.suggest.trying import Reach
    from compose.terminal.suggesting import show_suggestions
    from compose.terminal.typed.wishing import Asked

    kit = tuple(at_most or ())
    asked = Asked(skill, ages, pupils, court, kit, round_min, wait, turns, nobody_out, class_name, hall)
    reach = Reach(tries, states)
    raise typer.Exit(show_suggestions(name, modifier or [], asked, mend, reach, seconds, most, language, as_json))


def fit(
    played: Name,
    class_name: ClassName = None,
    pupils: Pupils = None,
    hall: InHall = None,
    modifier: With = None,
    quick: Quick = False,
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Fit a game to a class: teams, odd pupil, kit, hall, run-off, ages, and the rounds the lesson has time for."""
    from compose.check.space import Budget
    from compose.terminal.fitting import show_fit
    from compose.terminal.typed.classes import Who

    who = Who(pupils, class_name, hall)
    raise typer.Exit(show_fit(played, modifier or [], who, quick, Budget(states, memory), language, as_json))


def mix(
    names: Annotated[list[str] | None, typer.Argument(help="Games; without any, those of the library.")] = None,
    only: Annotated[list[str] | None, typer.Option("--only", help="A modifier. May be repeated.")] = None,
    seconds: Seconds = None,
    why: Annotated[bool, typer.Option("--why", help="Say why, for each pair that does not simply fit.")] = False,
    class_name: ClassName = None,
    out: Out = None,
    force: Force = False,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Make the table of games and modifiers: fits, does not fit, or makes something to mend."""
    from compose.terminal.mixing_table import show_mixing

    raise typer.Exit(show_mixing(names or [], only or [], seconds, why, class_name, out, force, language, as_json))


def keep(
    base: Name,
    modifier: With = None,
    title: Annotated[str | None, typer.Option("--title", help="The name of the remix.")] = None,
    about: Annotated[str | None, typer.Option("--about", help="What the remix is about, in a sentence.")] = None,
    credit: Annotated[str | None, typer.Option("--credit", help="Whose remix it is.")] = None,
    out: Out = None,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Keep a game with modifiers as a remix file: its base by name and content, the modifiers in order."""
    from compose.terminal.remix_writing import write_remix

    raise typer.Exit(write_remix(base, modifier or [], title, about, credit, out, force, as_json))


def carry(
    path: Annotated[Path, typer.Argument(help="A remix file.")],
    old: Annotated[Path | None, typer.Option("--old", help="The base as it was when the remix was made.")] = None,
    out: Out = None,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Carry a remix file over to its base as it is now, and tell every conflict."""
    from compose.terminal.remix_writing import carry as carry_over

    raise typer.Exit(carry_over(path, old, out, force, as_json))


def lineage(
    paths: Annotated[list[Path] | None, typer.Argument(help="Files or folders of rules, besides the library.")] = None,
    out: Annotated[Path | None, typer.Option("--out", help="An SVG file to write.")] = None,
    every_game: Annotated[bool, typer.Option("--all", help="Show games that nobody has remixed, too.")] = False,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Show which remix comes from which game, as text or as a drawing."""
    from compose.terminal.sharing.lineage import show_lineage

    raise typer.Exit(show_lineage(paths or [], out, every_game, force, as_json))
