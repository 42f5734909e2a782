"""The commands. Each is a few lines: names in, one stage after the other, an answer out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from compose.telling.wording import ENGLISH
from compose.terminal import (
    beginning_commands,
    compose_commands,
    draw_commands,
    forecast_commands,
    page_command,
    share_commands,
)
from compose.terminal.answer import say, say_json, speak
from compose.terminal.start import main
from compose.terminal.typed.looking_options import USUAL_MEGABYTES, USUAL_STATES, Memory, Seconds, States
from compose.terminal.typed.options import AsJson, ClassName, Force, InHall, Language, Name, Out, Pupils, With

app = typer.Typer(
    help="Write a hall game down once, remix it, and know before class whether the remix works.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)

Names = Annotated[list[Path], typer.Argument(help="Files of rules.")]


def _say_version(asked: bool) -> None:
    if asked:
        from compose.terminal.version import own_version

        say(f"Ruleweave {own_version()}")
        raise typer.Exit


@app.callback()
def program(
    version: Annotated[
        bool, typer.Option("--version", callback=_say_version, is_eager=True, help="Say which version this is.")
    ] = False,
) -> None:
    """Write a hall game down once, remix it, and know before class whether the remix works."""
    speak(ENGLISH)


@app.command()
def modifiers(as_json: AsJson = False) -> None:
    """List the modifiers of the library."""
    from compose.terminal.lists import list_modifiers

    list_modifiers(as_json)


@app.command()
def kit(
    skill: Annotated[str | None, typer.Option("--skill", help='Only balls fit for a skill, such as "kick".')] = None,
    as_json: AsJson = False,
) -> None:
    """List the kit of the library: what each thing is like, its sizes, the skills it is fit for."""
    from compose.terminal.kit_list import list_kit

    list_kit(skill, as_json)


@app.command()
def show(
    name: Name,
    understood: Annotated[bool, typer.Option("--understood", help="Say what was understood of it, too.")] = False,
    as_json: AsJson = False,
) -> None:
    """Show a game or a modifier as its rule sheet."""
    from compose.terminal.lists import show_sheet

    show_sheet(name, as_json)
    if understood and not as_json:
        from compose.terminal.typed.classes import Who
        from compose.terminal.understanding import show_understood

        show_understood(name, (), Who(), "en", as_json)


@app.command()
def understood(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Say what was understood of a game: who may do what, what follows, how it ends."""
    from compose.terminal.typed.classes import Who
    from compose.terminal.understanding import show_understood

    who = Who(pupils, class_name, hall)
    raise typer.Exit(show_understood(name, modifier or [], who, language, as_json))


@app.command()
def granted(as_json: AsJson = False) -> None:
    """Show the rules that every game takes for granted."""
    from compose.terminal.typed.finding_games import granted as sheet
    from grammar.format import format_game

    text = format_game(sheet())
    if as_json:
        say_json({"text": text})
    else:
        say(text.rstrip())


@app.command(name="say")
def say_wish(
    wanted: Annotated[
        list[str] | None, typer.Argument(help="What you want, such as: bring players back; nothing for all.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say how the language puts what you want."""
    from compose.terminal.wishes_told import tell_wishes

    raise typer.Exit(tell_wishes(" ".join(wanted or ()), as_json))


@app.command()
def means(
    code: Annotated[str, typer.Argument(help="The code behind a finding, such as C-stall; nothing for all.")] = "",
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Say what the code behind a finding means, what to do, and what gives it."""
    from compose.terminal.codes_told import tell_code

    raise typer.Exit(tell_code(code, language, as_json))


@app.command()
def tidy(
    files: Names,
    write_back: Annotated[bool, typer.Option("--force", help="Write the tidy text over each file.")] = False,
    only_look: Annotated[bool, typer.Option("--look", help="Only say which files are not tidy.")] = False,
    as_json: AsJson = False,
) -> None:
    """Bring rule sheets into their canonical wording and order; notes are kept."""
    from compose.terminal.tidying import tidy_files

    raise typer.Exit(tidy_files(files, write_back, only_look, as_json))


@app.command()
def remix(name: Name, modifier: With = None, out: Out = None, force: Force = False, as_json: AsJson = False) -> None:
    """Apply modifiers to a game and show or write the remixed rule sheet."""
    from compose.terminal.remixing import show_remix

    raise typer.Exit(show_remix(name, modifier or [], out, force, as_json))


@app.command()
def check(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    hall: InHall = None,
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    seconds: Seconds = None,
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """Find out whether a game can be won, ends, or gets stuck, and show the moves that lead there."""
    from compose.check.space import Budget
    from compose.terminal.checking import show_check
    from compose.terminal.typed.classes import Who

    who = Who(pupils, class_name, hall)
    raise typer.Exit(show_check(name, modifier or [], who, Budget(states, memory), seconds, language, as_json))


@app.command()
def card(
    name: Name,
    modifier: With = None,
    pupils: Pupils = None,
    class_name: ClassName = None,
    out: Out = None,
    hall: InHall = None,
    paper: Annotated[str, typer.Option("--paper", help="a4 or letter.")] = "a4",
    large: Annotated[bool, typer.Option("--large", help="Large print, on two pages.")] = False,
    units: Annotated[str, typer.Option("--units", help="metric or feet.")] = "metric",
    language: Language = "en",
    states: States = USUAL_STATES,
    memory: Memory = USUAL_MEGABYTES,
    seconds: Seconds = None,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Make the card of a game: text, or with --out a PDF, HTML, SVG, Markdown or text file."""
    from compose.check.space import Budget
    from compose.terminal.carding import Asked, make_card
    from compose.terminal.typed.classes import Who

    asked = Asked(paper, large, units, language, Budget(states, memory), seconds)
    raise typer.Exit(make_card(name, modifier or [], Who(pupils, class_name, hall), out, asked, force, as_json))


for commands in (beginning_commands, forecast_commands, compose_commands, draw_commands, share_commands, page_command):
    commands.register(app)


def run(words: Sequence[str]) -> int:
    """The exit code of a command, once it has printed what it has to say."""
    from compose.terminal.typed.calling import called

    return called(app, words)


if __name__ == "__main__":
    main()
