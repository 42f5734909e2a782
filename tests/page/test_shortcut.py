"""The file to double-click."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from compose.page.shortcut import shortcut, write_shortcut


@pytest.mark.parametrize(
    ("platform", "name", "start"),
    [
        ("win32", "Ruleweave.cmd", "@echo off\r\n"),
        ("darwin", "Ruleweave.command", "#!/bin/sh\n"),
        ("linux", "Ruleweave.desktop", "[Desktop Entry]\n"),
    ],
)
def test_each_system_has_its_own(tmp_path: Path, platform: str, name: str, start: str) -> None:
    path, text = shortcut(tmp_path, platform, "/a folder/python")
    assert path == tmp_path / name and text.startswith(start)
    assert '"/a folder/python" -c ' in text


@pytest.mark.skipif(os.name != "posix", reason="run by a shell")
def test_what_it_runs_is_the_page(tmp_path: Path) -> None:
    _, text = shortcut(tmp_path, "darwin", sys.executable)
    script = tmp_path / "run"
    script.write_text(text.replace(" page\n", " page --help\n"), encoding="utf-8")
    root = Path(__file__).parents[2]
    done = subprocess.run(["sh", str(script)], capture_output=True, text=True, cwd=root, check=True)
    assert "--no-open" in done.stdout


def test_nothing_is_written_over(tmp_path: Path) -> None:
    write_shortcut(tmp_path)
    with pytest.raises(FileExistsError):
        write_shortcut(tmp_path)
