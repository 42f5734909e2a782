"""The program in a shell: completion, pipes that close early, the name under which it is installed."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from random import Random

import pytest
from running import ROOT, run

from tests.seed import SEED

PROGRAM = f"#!{sys.executable}\nfrom compose.terminal.start import main\nmain()\n"


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


@pytest.mark.parametrize(
    ("surroundings", "code"),
    [
        ("> /dev/full", 2),
        (">&-", 0),
        ("2>&- >&-", 0),
        ("| head -c 9 > /dev/null; exit ${PIPESTATUS[0]}", 0),
    ],
)
def test_answer_that_cannot_be_written(program: Path, surroundings: str, code: int) -> None:
    result = shell(f'{program} show "lantern row" {surroundings}')
    assert result.returncode == code, result.stderr
    assert "Traceback" not in result.stderr and "Exception ignored" not in result.stderr


def test_mistakes_that_nobody_hears_keep_their_exit_code(program: Path) -> None:
    assert shell(f"{program} check nonesuch 2>&-").returncode == 2


def test_folder_that_is_gone(program: Path, tmp_path: Path) -> None:
    (tmp_path / "gone").mkdir()
    result = shell(f"cd {tmp_path}/gone && rmdir ../gone && {program} remix 'lantern row' --out x.rules")
    assert result.returncode == 2 and "Traceback" not in result.stderr


@pytest.mark.parametrize("after_s", [Random(f"{SEED} {turn}").uniform(0.02, 1.2) for turn in range(8)])
def test_stopped_from_the_keyboard(after_s: float) -> None:
    """From when the program itself runs: what Python says to a stop before its first line is not ours."""
    begins = "from compose.terminal.start import main; print('begun', flush=True); main()"
    command = [sys.executable, "-c", begins, "forecast", "heron and pike", "--json"]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment)
    assert process.stdout is not None and process.stdout.readline() == "begun\n"
    time.sleep(after_s)
    process.send_signal(signal.SIGINT)
    printed, said = process.communicate(timeout=60)
    assert (process.returncode, "Traceback" in said) == (130, False), said
    assert "Stopped" in said or json.loads(printed)["stopped"], "once it reckons, it says what it knows by then"


@pytest.mark.parametrize("number", ["nan", "inf", "-nan", "1e999"])
def test_numbers_to_reckon_with(number: str) -> None:
    assert "Invalid value" in run("forecast", "lantern row", "--minutes", number, code=2).output
