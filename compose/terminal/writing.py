"""Files on disk: a write is whole or not at all, and nothing is overwritten unasked."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from compose.terminal.answer import refuse


def write(path: Path, data: bytes, force: bool, as_json: bool = False) -> None:
    """Write a file whole; ends the command where it stands already or cannot be written."""
    name = ""
    try:
        if path.is_dir():
            refuse(f"`{path}` is a folder.", "Name a file in it.", as_json)
        if path.exists() and not force:
            refuse(f"`{path}` is there already.", "Give another name, or --force to write over it.", as_json)
        if not path.parent.is_dir():
            refuse(f"There is no folder `{path.parent}`.", "Make it first, or name another.", as_json)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, 0o644)
        os.replace(name, path)
    except OSError as error:
        if name and os.path.exists(name):
            os.unlink(name)
        refuse(f"`{path}` cannot be written: {error.strerror}.", "Name a place where you may write.", as_json)
