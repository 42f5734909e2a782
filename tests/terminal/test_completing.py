"""The shell completes names of games, modifiers and classes, and the values of options."""

from __future__ import annotations

import pytest
from running import COMMANDS, process

from compose.terminal.typed.completing import COMPLETERS


@pytest.mark.parametrize(
    ("words", "offered"),
    [
        ("check lan", "lantern-row"),
        ("card lantern-row --class be", "beck-class"),
        ("card lantern-row --with add", "add-balls"),
        ("card lantern-row --paper ", "letter"),
        ("games --skill k", "kick"),
        ("new kn", "knock-down"),
        ("means C-st", "C-stall"),
    ],
)
def test_what_may_come_next(words: str, offered: str) -> None:
    begun = words.split(" ")
    variables = {"_RULEWEAVE_COMPLETE": "complete_bash", "COMP_WORDS": f"ruleweave {words}"}
    done = process(**variables, COMP_CWORD=str(len(begun)))
    assert offered in done.stdout.decode().split()


def test_every_completer_belongs_to_some_parameter() -> None:
    there = {getattr(each, "name", "") for command in COMMANDS.values() for each in _parameters(command)}
    assert set(COMPLETERS) <= there


def _parameters(command: object) -> list[object]:
    inner = getattr(command, "commands", {}).values()
    return [*getattr(command, "params", []), *(each for one in inner for each in _parameters(one))]
