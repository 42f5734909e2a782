"""The own shelf of a school: games, remixes and modifiers with where they came from, notes and observed rounds.

Every method gives an Outcome. A write is there for good when the method returns: it is in the plain files,
on the disk. Whoever is stopped in the middle leaves the shelf as it was, or as it would have become.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

import attrs
from attrs import define

from compose.share import journal, rounds, shelf_index
from compose.share.bounds import MOST_RULES_BYTES
from compose.share.item import Item
from compose.share.naming import slug
from compose.share.refusal import RefusedError, shown
from compose.share.rounds import ObservedRound, rounds_path
from compose.share.shelf_files import (
    Note,
    Origin,
    Stored,
    files_of,
    known_json,
    known_path,
    noted,
    past_path,
    read_stored,
)
from compose.share.strict_json import json_bytes
from compose.share.told import outcome_of, told
from compose.share.whole_files import read_plain, write_whole
from grammar.finding import Finding, Outcome, Severity
from grammar.span import Span
from grammar.words import did_you_mean

SETTING = "RULEWEAVE_SHELF"
_READING_IS_ENOUGH = ("S-read-only", "S-full")


def usual_folder() -> Path:
    """Where the shelf is unless the teacher names another place: the platform's folder for a user's data."""
    named = os.environ.get(SETTING)
    if named:
        return Path(named)
    from platformdirs import user_data_path

    return user_data_path("ruleweave", appauthor=False) / "shelf"


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


@define
class Shelf:
    """An open shelf; close it, or use it in a with statement."""

    folder: Path
    index: sqlite3.Connection
    read_only: bool = False

    def __enter__(self) -> Shelf:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the index."""
        self.index.close()

    def catch_up(self) -> int:
        """Finish what somebody was stopped in, and read what changed in the plain files; how many did."""
        if not journal.stands_open(self.folder) and not shelf_index.stale(self.index, self.folder):
            return 0
        with self._writing():
            return 0

    @contextmanager
    def _writing(self) -> Iterator[None]:
        """Hold the one lock of the shelf; the index is up to the plain files before and after."""
        if self.read_only:
            hint = "Choose a folder where you may write."
            raise RefusedError(
                "S-read-only", f"`{self.folder}` may be read but not written; nothing was changed.", hint
            )
        self.index.execute("BEGIN IMMEDIATE")
        try:
            shelf_index.prepared(self.index)
            journal.finish_open(self.folder)
            shelf_index.refreshed(self.index, self.folder)
            yield
            shelf_index.refreshed(self.index, self.folder)
            self.index.execute("COMMIT")
        except BaseException:
            if self.index.in_transaction:
                self.index.execute("ROLLBACK")
            raise

    @told
    def rebuild(self) -> int:
        """Throw the index away and make it again from the plain files; how many files were read."""
        with self._writing():
            shelf_index.emptied(self.index)
            return shelf_index.refreshed(self.index, self.folder)

    @told
    def stored(self) -> tuple[Stored, ...]:
        """Everything on the shelf that can be read, games first."""
        self.catch_up()
        return tuple(read_stored(self.folder, path)[0] for path in self._paths())

    @told
    def named(self, name: str) -> Stored:
        """The thing of that name: a game or remix, else a modifier."""
        return self._named(name)

    @told
    def put(self, item: Item, origin: Origin | None = None) -> Stored:
        """Put a thing on the shelf; refused where another of its name stands there already."""
        with self._writing():
            there = self._of_key(item)
            if there is not None and there.item.content != item.content:
                title = f"The shelf has {there.item.name} already, and it is not the same."
                raise RefusedError("S-taken", title, "Give yours another name, or merge the two.")
            if there is not None:
                return there
            stored = Stored(item, item.path, origin)
            journal.carry_out(self.folder, files_of(stored), f"putting {item.name} on the shelf")
            return stored

    @told
    def replace(self, item: Item) -> Stored:
        """Put a newer state of a thing in the place of the old; what it was before is kept for merging."""
        with self._writing():
            old = self._of_key(item) or self._named(item.name)
            history = (*old.item.history, old.item.content, *item.history)
            newer = attrs.evolve(item, history=tuple(dict.fromkeys(each for each in history if each != item.content)))
            stored = attrs.evolve(old, item=newer)
            journal.carry_out(self.folder, files_of(stored), f"changing {item.name}")
            return stored

    @told
    def change_files(self, after: Mapping[str, bytes | None], label: str) -> journal.Change:
        """Change several plain files as one."""
        with self._writing():
            return journal.carry_out(self.folder, after, label)

    @told
    def undo(self) -> journal.Change:
        """Undo the last change of games, remixes or modifiers."""
        with self._writing():
            return journal.undo(self.folder)

    @told
    def take_off(self, name: str) -> Stored:
        """Take a thing off the shelf; it can be undone."""
        with self._writing():
            stored = self._named(name)
            gone = {stored.path: None, known_path(stored.path): None}
            journal.carry_out(self.folder, gone, f"taking {stored.item.name} off the shelf")
            return stored

    @told
    def note(self, name: str, note: Note) -> Stored:
        """Keep a note with a thing."""
        with self._writing():
            stored = noted(self._named(name), note)
            write_whole(self.folder / known_path(stored.path), json_bytes(known_json(stored)))
            return stored

    @told
    def observe(self, name: str, seen: ObservedRound) -> int:
        """Keep a round that was played; how many rounds of that game are kept now. See rounds.observed."""
        with self._writing():
            path = self.folder / rounds_path(name)
            path.parent.mkdir(exist_ok=True)
            before = read_plain(path, rounds.MOST_BYTES) if path.exists() else None
            write_whole(path, rounds.with_round(before, seen))
            return len(rounds.rounds_in(path.read_bytes(), path.name))

    @told
    def rounds(self, name: str) -> tuple[ObservedRound, ...]:
        """The rounds of a game that were kept, in the order in which they were."""
        path = self.folder / rounds_path(name)
        return rounds.rounds_in(read_plain(path, rounds.MOST_BYTES), path.name) if path.exists() else ()

    @told
    def past(self, content: str) -> bytes:
        """A sheet that was once kept here, by its content hash; no bytes where it never was."""
        path = self.folder / past_path(content)
        return read_plain(path, MOST_RULES_BYTES) if path.is_file() else b""

    def troubles(self) -> tuple[Finding, ...]:
        """Plain files that cannot be read, each with the reason."""
        rows = self.index.execute("SELECT path, code, title, hint FROM troubles ORDER BY path")
        return tuple(
            Finding(code, Severity.WARNING, title, Span(str(self.folder / path), 0, 0, 0), hint)
            for path, code, title, hint in rows
        )

    def _paths(self) -> list[str]:
        return [path for (path,) in self.index.execute("SELECT path FROM items ORDER BY kind, slug")]

    def _of_key(self, item: Item) -> Stored | None:
        same = "kind = 'modifier'" if item.kind == "modifier" else "kind <> 'modifier'"
        row = self.index.execute(f"SELECT path FROM items WHERE slug = ? AND {same}", (item.slug,)).fetchone()
        return read_stored(self.folder, row[0])[0] if row else None

    def _named(self, name: str) -> Stored:
        query = "SELECT path FROM items WHERE slug = ? ORDER BY kind = 'modifier'"
        row = self.index.execute(query, (slug(name),)).fetchone()
        if row is None:
            names: Iterable[str] = (each for (each,) in self.index.execute("SELECT name FROM items"))
            hint = did_you_mean(name, names) or "Look at the list of what is there."
            raise RefusedError("S-unknown", f"The shelf has nothing called `{shown(name)}`.", hint)
        return read_stored(self.folder, row[0])[0]
