"""The program in a shell: completion, pipes that close early, the name under which it is installed."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from running import ROOT

PROGRAM = f"#!{sys.executable}\nfrom compose.terminal.main import main\nmain()\n"


@pytest.fixture
def program(tmp_path: Path) -> Path:
    """The program as it is called once installed."""
    path = tmp_path / "ruleweave"
    path.write_text(PROGRAM, encoding="utf-8")
    path.chmod(0o755)
    return path


def shell(command: str, **variables: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **variables}
    return subprocess.run(
        ["bash", "-c", command], capture_output=True, text=True, env=environment, timeout=60, check=False
    )


def test_completion_script_is_shown(program: Path) -> None:
    result = shell(f"{program} --show-completion; exit $?")
    assert result.returncode == 0, result.stderr
    assert "_RULEWEAVE_COMPLETE" in result.stdout


def test_commands_are_completed(program: Path) -> None:
    result = shell(f"{program}", _RULEWEAVE_COMPLETE="complete_bash", COMP_WORDS="ruleweave ch", COMP_CWORD="1")
    assert result.stdout.split() == ["check"]


def test_pipe_that_closes_early(program: Path) -> None:
    result = shell(f"{program} modifiers | head -n 1")
    assert result.returncode == 0
    assert "Traceback" not in result.stderr


def test_file_name_that_is_no_text(program: Path, tmp_path: Path) -> None:
    result = shell(f"{program} check {tmp_path}/$'\\xff'.rules; echo $?")
    assert result.stdout.strip() == "2"
    assert "Traceback" not in result.stderr
