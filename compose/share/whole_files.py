"""Files on disk, whole or not at all, and read without following links; trouble is told in plain words."""

from __future__ import annotations

import errno
import os
import secrets
import sqlite3
import stat
from pathlib import Path

from compose.share.refusal import RefusedError

_FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_LOCKED_UP = (errno.EACCES, errno.EPERM, errno.EROFS)


def write_whole(path: Path, data: bytes, lasting: bool = True) -> None:
    """Write a file so that after a crash it is there with all its bytes, or as it was before.

    What is not `lasting` and can be made again is not waited for: a loss of power may take it.
    A new file has the rights that the user's mask gives, one that was there keeps its own. Raises OSError; then nothing
    is left behind.
    """
    unfinished = path.with_name(f".writing-{secrets.token_hex(8)}")
    try:
        # Not by tempfile, whose files nobody else may read.
        handle = os.open(unfinished, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            if lasting:
                os.fsync(file.fileno())
        if path.is_file():
            os.chmod(unfinished, stat.S_IMODE(path.stat().st_mode))
        os.replace(unfinished, path)
    except BaseException:
        unfinished.unlink(missing_ok=True)
        raise
    if lasting:
        keep_folder(path.parent)


def keep_folder(folder: Path) -> None:
    """Make the names in a folder last through a crash, where the system has a way to ask for it."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def read_plain(path: Path, most: int) -> bytes:
    """The bytes of a plain file; raises RefusedError for a link, a device or a file of more than `most` bytes."""
    if not stat.S_ISREG(path.lstat().st_mode):
        raise RefusedError("S-link", f"`{path.name}` is a link or a device, not a file.")
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as file:
        data = file.read(most + 1)
    if len(data) > most:
        raise RefusedError("S-size", f"`{path.name}` is larger than {most >> 10} KiB.")
    return data


def trouble(error: OSError | sqlite3.Error, folder: Path, state: str = "nothing was changed") -> RefusedError:
    """What a refusal of the disk or of the index means for whoever keeps the shelf; `state` is how it left things."""
    if isinstance(error, sqlite3.Error):
        return _index_trouble(error, folder)
    if error.errno in _FULL:
        return RefusedError("S-full", f"The disk of `{folder}` is full; {state}.", "Make room, then try again.")
    if error.errno in _LOCKED_UP:
        hint = "Choose a folder where you may write."
        return RefusedError("S-read-only", f"`{folder}` may not be read or written; {state}.", hint)
    said = (error.strerror or str(error)).lower()
    return RefusedError("S-disk", f"`{folder}` cannot be used: {said}.", "Check the folder's name.")


def _index_trouble(error: sqlite3.Error, folder: Path) -> RefusedError:
    name = getattr(error, "sqlite_errorname", "") or ""
    if name.startswith(("SQLITE_FULL", "SQLITE_IOERR_WRITE", "SQLITE_IOERR_SHMSIZE")):
        return RefusedError(
            "S-full", f"The disk of `{folder}` is full; nothing was changed.", "Make room, then try again."
        )
    if name.startswith(("SQLITE_READONLY", "SQLITE_CANTOPEN", "SQLITE_PERM")):
        hint = "Choose a folder where you may write."
        return RefusedError("S-read-only", f"`{folder}` may be read but not written; nothing was changed.", hint)
    if name.startswith(("SQLITE_BUSY", "SQLITE_LOCKED")):
        title = "Another program has been writing to the shelf for a long time; nothing was changed."
        return RefusedError("S-busy", title, "Try again in a minute.")
    title = f"The index of the shelf in `{folder}` cannot be used: {error}."
    return RefusedError("S-index", title, "Have it built again; the plain files are not touched.")
