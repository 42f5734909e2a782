"""A file to double-click that opens the page, for the system it is written on."""

from __future__ import annotations

import os
import sys
from pathlib import Path

NAMES = {"win32": "Ruleweave.cmd", "darwin": "Ruleweave.command"}
OTHERWISE = "Ruleweave.desktop"


def shortcut(folder: Path, platform: str = sys.platform, program: str = sys.executable) -> tuple[Path, str]:
    """Where the file goes and what it says; it starts the Python that runs now, wherever it was installed."""
    start = f'"{program}" -c "from compose.terminal.main import main; main()" page'
    path = folder / NAMES.get(platform, OTHERWISE)
    if platform == "win32":
        return path, f"@echo off\r\nchcp 65001 >nul\r\n{start}\r\nif errorlevel 1 pause\r\n"
    if platform == "darwin":
        return path, f"#!/bin/sh\nexec {start}\n"
    # Within a double-quoted argument of such a file these letters have a backslash (Desktop Entry Specification 1.5).
    lines = ("[Desktop Entry]", "Type=Application", "Name=Ruleweave", f"Exec={start}", "Terminal=true")
    return path, "\n".join((*lines, "Categories=Education;", ""))


def write_shortcut(folder: Path) -> Path:
    """Write it, ready to be opened; raises OSError where that cannot be, FileExistsError where something lies there."""
    path, text = shortcut(folder)
    with path.open("x", encoding="utf-8", newline="") as file:
        file.write(text)
    if os.name == "posix":
        path.chmod(0o755)
    return path
