"""Files on disk: a write is whole or not at all, and nothing is overwritten unasked."""

from __future__ import annotations

import os
import stat
from collections.abc import Sequence
from pathlib import Path

from compose.share.whole_files import trouble, write_whole
from compose.terminal.answer import refuse
from grammar.words import listing


def ends_with(out: Path | None, endings: Sequence[str], as_json: bool) -> None:
    """Ends the command where the name of a file to write does not say which of these it is to be."""
    if out is not None and out.suffix.lower() not in endings:
        refuse(f"`{out}` does not say what to write.", f"End its name with {listing(endings, 'or')}.", as_json)


def write(path: Path, data: bytes, force: bool, as_json: bool = False) -> None:
    """Write a file whole; ends the command where it stands already or cannot be written.

    A link stays a link: what it points to is written. A pipe or a terminal is written to as it is.
    """
    try:
        if path.is_dir():
            refuse(f"`{path}` is a folder.", "Name a file in it.", as_json)
        if path.exists() and _flows(path.stat().st_mode):
            with open(path, "wb", buffering=0) as stream:
                stream.write(data)
            return
        if path.exists() and not path.is_file():
            refuse(f"`{path}` is a device, not a file.", "Name a file.", as_json)
        if os.path.lexists(path) and not force:
            refuse(f"`{path}` is there already.", "Give another name, or --force to write over it.", as_json)
        file = path.resolve()
        if not file.parent.is_dir():
            refuse(f"There is no folder `{file.parent}`.", "Make it first, or name another.", as_json)
        write_whole(file, data)
    except OSError as error:
        hint = trouble(error, path.parent).hint or "Name a place where you may write."
        refuse(f"`{path}` cannot be written: {error.strerror}.", hint, as_json)


def _flows(mode: int) -> bool:
    return stat.S_ISFIFO(mode) or stat.S_ISCHR(mode) or stat.S_ISSOCK(mode)
