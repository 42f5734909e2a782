"""The commands to begin with: find a game, begin one of one's own, what answers as JSON hold."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

import grammar
from compose.terminal.answer import say
from compose.terminal.typed.options import AsJson, ClassName, Force, InHall, Language, Out, Pupils


def register(app: typer.Typer) -> None:
    """Add the commands to the program."""
    for command in (games, new, language, schema):
        app.command()(command)


def games(
    skill: Annotated[str | None, typer.Option("--skill", help='Players try this skill, such as "kick".')] = None,
    ages: Annotated[str | None, typer.Option("--ages", help='For these ages, such as "9 to 11".')] = None,
    pupils: Pupils = None,
    kit: Annotated[
        list[str] | None,
        typer.Option("--kit", help='What is in the cupboard: "8 foam balls", or "cones". May be repeated.'),
    ] = None,
    minutes: Annotated[float | None, typer.Option("--minutes", min=0.1, help="A round is over within so many.")] = None,
    wait: Annotated[float | None, typer.Option("--wait", min=0.01, help="The longest mean wait, in min.")] = None,
    class_name: ClassName = None,
    hall: InHall = None,
    sort: Annotated[str, typer.Option("--sort", help="name, age, few pupils, many pupils, minutes or wait.")] = "name",
    language: Language = "en",
    as_json: AsJson = False,
) -> None:
    """List the games of this folder, the shelf and the library: all, or those that are as you wish."""
    from compose.terminal.typed.choosing_games import Chosen, show_games
    from compose.terminal.typed.wishing import Asked

    asked = Asked(skill, ages, pupils, wait_min=wait, class_name=class_name, hall=hall)
    raise typer.Exit(show_games(Chosen(asked, kit or (), minutes, sort), language, as_json))


def new(
    kind: Annotated[str, typer.Argument(help="The kind of play, such as knock down; without it, all kinds.")] = "",
    title: Annotated[str, typer.Option("--title", help="The name of what is begun.")] = "",
    out: Out = None,
    force: Force = False,
    as_json: AsJson = False,
) -> None:
    """Write a sheet to begin from: a game by its kind of play, a class, a hall or a modifier."""
    from compose.terminal.beginning import begin

    raise typer.Exit(begin(kind, title, out, force, as_json))


def language() -> None:
    """Show the page of the language: every line that a sheet may have, with an example."""
    say(Path(grammar.__file__).with_name("LANGUAGE.md").read_text(encoding="utf-8").rstrip())


def schema() -> None:
    """Show what the fields of the answers as JSON mean: a JSON Schema."""
    say(Path(__file__).with_name("answers.schema.json").read_text(encoding="utf-8").rstrip())
