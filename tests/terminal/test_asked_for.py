"""One command made alone is the same command as in the whole program."""

from __future__ import annotations

import pytest
import typer
import typer.main
from click.testing import CliRunner
from running import COMMANDS, NAME, typed

from compose.terminal.main import app
from compose.terminal.typed.calling import asked_for

WHOLE = {info.name for info in app.registered_groups}


@pytest.mark.parametrize("name", sorted(set(COMMANDS) - WHOLE))
def test_a_command_made_alone_explains_itself_as_in_the_whole_program(name: str) -> None:
    alone = asked_for(app, [name])
    assert alone is not app
    group = typer.main.get_group(alone)
    assert set(group.commands) == {name}
    assert CliRunner().invoke(group, [name, "--help"], prog_name=NAME).stdout == typed(name, "--help").stdout


@pytest.mark.parametrize("words", [[], ["--help"], ["chek"], ["pack", "make"], ["--install-completion"]])
def test_anything_else_is_left_to_the_whole_program(words: list[str]) -> None:
    assert asked_for(app, words) is app
