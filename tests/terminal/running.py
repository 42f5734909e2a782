"""Runs the program inside the test, or as a process of its own, and looks at what every answer must be."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import typer.main
from click.testing import CliRunner, Result

from compose.terminal.main import app

ROOT = Path(__file__).parents[2]
NAME = "ruleweave"
PROGRAM = typer.main.get_command(app)  # built once: that takes ten times as long as a small command
COMMANDS = PROGRAM.commands  # type: ignore[attr-defined]


def taking(part: str) -> tuple[str, ...]:
    """The commands that have an argument or option of that name."""
    return tuple(sorted(name for name, command in COMMANDS.items() if part in {each.name for each in command.params}))


OF_A_GAME = taking("name")
REPORTING = taking("as_json")


def typed(*arguments: str | Path, **variables: str) -> Result:
    """What comes of a call, as it is typed; whatever that is."""
    return CliRunner().invoke(PROGRAM, [str(argument) for argument in arguments], prog_name=NAME, env=variables)


def run(*arguments: str | Path, code: int | None = None) -> Result:
    """The program's answer; it never ends with an exception of its own."""
    result = typed(*arguments)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code in (0, 1, 2), result.output
    assert "Traceback" not in result.output
    if code is not None:
        assert result.exit_code == code, result.output
    return result


def run_json(*arguments: str | Path, code: int | None = None) -> Any:
    """The program's answer as JSON: one object and nothing else."""
    return json.loads(run(*arguments, "--json", code=code).stdout)


def process(*arguments: str | Path, **variables: str) -> subprocess.CompletedProcess[bytes]:
    """The program as a process of its own."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **variables}
    command = [sys.executable, "-m", "compose.terminal.main", *(str(argument) for argument in arguments)]
    return subprocess.run(command, capture_output=True, env=environment, timeout=60, check=False)
