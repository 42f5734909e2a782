"""The class that the page keeps: a sheet on the shelf, which the commands can read too."""

from __future__ import annotations

from pathlib import Path

from compose.share.whole_files import read_plain, write_whole

FILE = "my-class.rules"
MOST_BYTES = 64 << 10
# Somebody who has not said anything yet: two dozen pupils, for whom most games of the library are made (our choice).
USUAL = "class My class\n  class of 24\n  ages 9 to 10\n  lesson of 40 min\n"


def group_text(shelf: Path) -> str:
    """The sheet of the class, or the usual one where none is kept."""
    path = shelf / FILE
    return read_plain(path, MOST_BYTES).decode("utf-8", "replace") if path.is_file() else USUAL


def is_kept(shelf: Path) -> bool:
    """Whether a class was kept here."""
    return (shelf / FILE).is_file()


def keep_group(shelf: Path, text: str) -> None:
    """Keep the sheet of the class."""
    shelf.mkdir(parents=True, exist_ok=True)
    write_whole(shelf / FILE, text.encode())
