"""The README says the truth: every command of its walk is run, and prints what stands there."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
PAGES = (README, ROOT / "DEVELOPERS.md")


def blocks() -> Iterator[tuple[str, str]]:
    """Command and expected output of each line that begins with "$ " in a console block."""
    for block in re.findall(r"```console\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL):
        for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            command, _, output = part.partition("\n")
            yield command, output


@pytest.mark.parametrize(("command", "output"), list(blocks()))
def test_command_prints_what_the_readme_shows(command: str, output: str, tmp_path: Path) -> None:
    words = shlex.split(command)
    assert words[0] == "ruleweave"
    environment = os.environ | {"PYTHONPATH": str(ROOT), "NO_COLOR": "1", "COLUMNS": "80"}
    run = subprocess.run(
        [sys.executable, "-m", "compose.terminal.main", *words[1:]],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode in (0, 1), run.stderr
    printed = re.sub(r"\S*/library/", "library/", run.stdout + run.stderr)
    shown = output.strip("\n")
    if shown.endswith("..."):
        assert printed.startswith(shown.removesuffix("...").rstrip("\n"))
    else:
        assert printed.strip("\n") == shown


def test_readme_opens_with_the_job_and_two_commands() -> None:
    text = README.read_text(encoding="utf-8")
    assert text.count("<!-- tests -->") == 1
    assert text.index("python3 -m venv") < text.index("## ")


def test_the_picture_is_what_the_command_draws(tmp_path: Path) -> None:
    [picture] = re.findall(r"!\[[^\]]+\]\(([^)]+\.svg)\)", README.read_text(encoding="utf-8"))
    drawn = tmp_path / "row.svg"
    run = subprocess.run(
        [sys.executable, "-m", "compose.terminal.main", "plan", "lantern row", "--out", str(drawn)],
        cwd=README.parent,
        capture_output=True,
        check=False,
    )
    assert run.returncode == 0, run.stderr
    assert drawn.read_bytes() == (README.parent / picture).read_bytes()


def test_pages_name_only_commands_that_exist() -> None:
    from compose.terminal.main import app

    known = {command.name or command.callback.__name__ for command in app.registered_commands if command.callback}
    known |= {group.name for group in app.registered_groups if group.name}
    for page in PAGES:
        for name in re.findall(r"(?:^|[`$/ ])ruleweave ([a-z][a-z-]*)", page.read_text(encoding="utf-8"), re.MULTILINE):
            assert name in known, f"{page.name} names the command {name}"
