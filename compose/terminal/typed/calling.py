"""A call of the program: the one command that it names, and what is wrong with a call as words or as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import typer
from typer.main import get_command, get_command_name

from compose.terminal.answer import WRONG, finding_json, say_json
from compose.terminal.typed.completing import asked, with_completion
from grammar.finding import Finding, Severity
from grammar.span import Span

# All that the library of commands says of a call; where it stands hangs on that library's version.
_WrongUse: Any = typer.BadParameter.__mro__[2]


def called(app: typer.Typer, words: Sequence[str]) -> int:
    """The exit code of a command. A call that means nothing is told as JSON, too, where JSON is asked for."""
    alone = asked_for(app, words)
    if "--json" not in words:
        return _run(alone, words)
    try:
        return _run(alone, words, standalone=False)
    except typer.Abort:
        return WRONG
    except _WrongUse as error:
        place = Span("the command line", 0, 0, 0)
        wrong = Finding("U-use", Severity.ERROR, error.format_message(), place, _see(error))
        say_json({"findings": [finding_json(wrong)]})
        return WRONG


def _run(app: typer.Typer, words: Sequence[str], standalone: bool = True) -> int:
    try:
        command = with_completion(get_command(app)) if asked() else get_command(app)
        code = command.main(list(words), "ruleweave", standalone_mode=standalone)
    except SystemExit as end:
        code = end.code
    return code if isinstance(code, int) else 0


def _see(error: Exception) -> str:
    context = getattr(error, "ctx", None)
    return f"See: {context.command_path} --help" if context is not None else "See: ruleweave --help"


def asked_for(app: typer.Typer, words: Sequence[str]) -> typer.Typer:
    """The program with no more than the command that is asked for: making all of them takes as long as a check."""
    commands = [
        each
        for each in app.registered_commands
        if each.callback and words[:1] == [each.name or get_command_name(each.callback.__name__)]
    ]
    if not commands:
        return app
    alone = typer.Typer(help=app.info.help, rich_markup_mode=None, pretty_exceptions_enable=False)
    alone.registered_commands = commands
    alone.callback()(_nothing)
    return alone


def _nothing() -> None:
    """Keeps the name of the command in front of its options, though it is the only one."""
