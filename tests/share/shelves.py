"""Shelves for tests: opened in a folder, compared with what a fresh look at the plain files gives."""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

from compose.share.pack.pack import Pack, read_pack
from compose.share.shelf import index as shelf_index
from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.shelf import Shelf
from grammar.finding import Outcome

Value = TypeVar("Value")


def opened(folder: Path) -> Shelf:
    """The shelf in a folder."""
    return given(open_shelf(folder))


def given(outcome: Outcome[Value]) -> Value:
    """The value of an outcome that must have one."""
    assert outcome.value is not None, outcome.findings
    return outcome.value


def refusal(outcome: Outcome[Value]) -> tuple[str, str]:
    """Code and title of an outcome that must have none."""
    assert outcome.value is None, outcome.value
    assert len(outcome.findings) == 1 and outcome.findings[0].title.isprintable()
    return outcome.findings[0].code, outcome.findings[0].title


def pack(data: bytes) -> Pack:
    """The pack of some bytes."""
    return given(read_pack(data, "test.zip"))


def contents(shelf: Shelf) -> dict[str, str]:
    """Names and content hashes of everything on the shelf."""
    return {stored.item.name: stored.item.content for stored in given(shelf.stored())}


def files(folder: Path) -> dict[str, bytes]:
    """Every plain file of a shelf, the index and the journal left out."""
    found = (path for path in folder.rglob("*") if path.is_file())
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in found
        if not path.name.startswith("shelf.sqlite") and "journal" not in path.parts
    }


_TABLES = ("items", "tags", "rounds", "troubles", "files", "words")


def index_is_true(shelf: Shelf) -> bool:
    """Whether the index says just what an index made anew from the plain files says."""
    fresh = shelf_index.in_memory()
    shelf_index.prepared(fresh)
    shelf_index.refreshed(fresh, shelf.folder)
    return all(_rows(shelf.index, table) == _rows(fresh, table) for table in _TABLES)


def _rows(connection: object, table: str) -> list[tuple[object, ...]]:
    what = {
        "items": "path, kind, name, slug, content, history, origin, lineage, ages_least, players_most, long_m",
        "tags": "(SELECT path FROM items WHERE id = item), sort, word",
        "words": "name, about, skills, kit, rules, notes",
    }.get(table, "*")
    return sorted(connection.execute(f"SELECT {what} FROM {table}").fetchall(), key=repr)  # type: ignore[attr-defined]
