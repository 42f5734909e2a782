"""Where the shelf is, and how it is opened: made, caught up with its plain files, or for reading only."""

from __future__ import annotations

from pathlib import Path

from compose.share.shelf import index as shelf_index
from compose.share.shelf.shelf import Shelf
from compose.share.told import outcome_of
from grammar.finding import Outcome

_READING_IS_ENOUGH = ("S-read-only", "S-full")


def open_shelf(folder: Path) -> Outcome[Shelf]:
    """The shelf in a folder, made there if need be. A folder that may only be read gives a shelf for reading."""
    opened = outcome_of(folder, lambda: Shelf(folder, shelf_index.connected(folder)))
    if opened.value is not None:
        ready = outcome_of(folder, opened.value.catch_up)
        if ready.value is not None:
            return opened
        opened.value.close()
        opened = Outcome(None, ready.findings)
    code = opened.findings[0].code
    if code == "S-index":
        return outcome_of(folder, lambda: _with_new_index(folder))
    if code in _READING_IS_ENOUGH and folder.is_dir():
        return outcome_of(folder, lambda: _for_reading(folder))
    return opened


def _for_reading(folder: Path) -> Shelf:
    shelf = Shelf(folder, shelf_index.in_memory(), read_only=True)
    shelf_index.prepared(shelf.index)
    shelf_index.refreshed(shelf.index, folder)
    return shelf


def _with_new_index(folder: Path) -> Shelf:
    """A shelf whose index was damaged: it is set aside and made again from the plain files."""
    for ending in ("", "-wal", "-shm"):
        (folder / f"{shelf_index.FILE}{ending}").unlink(missing_ok=True)
    shelf = Shelf(folder, shelf_index.connected(folder))
    shelf.catch_up()
    return shelf
