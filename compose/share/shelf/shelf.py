"""The own shelf of a school: games, remixes and modifiers with where they came from, notes and observed rounds.

Every method gives an Outcome. A write is there for good when the method returns: it is in the plain files,
on the disk. Whoever is stopped in the middle leaves the shelf as it was, or as it would have become.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

import attrs
from attrs import define

from compose.share.bounds import MOST_RULES_BYTES
from compose.share.naming import slug
from compose.share.pack.item import Item
from compose.share.refusal import RefusedError, shown
from compose.share.shelf import index as shelf_index
from compose.share.shelf import journal, rounds
from compose.share.shelf.files import (
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
from compose.share.shelf.rounds import ObservedRound, rounds_path
from compose.share.strict_json import json_bytes
from compose.share.told import told
from compose.share.whole_files import read_plain, write_whole
from grammar.finding import Finding, Severity
from grammar.span import Span
from grammar.words import did_you_mean


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
        if self.read_only:
            return shelf_index.refreshed(self.index, self.folder)
        with self.writing(for_index=True) as changed:
            return changed

    @contextmanager
    def writing(self, for_index: bool = False) -> Iterator[int]:
        """Hold the one lock of the shelf; the index is up to the plain files before and after.

        Once the plain files are written the work is done, for they are the truth: where only the index then
        finds no room any more, whoever opens the shelf next brings it up to them. `for_index` is for work that
        is about the index itself.
        """
        if self.read_only:
            hint = "Choose a folder where you may write."
            raise RefusedError(
                "S-read-only", f"`{self.folder}` may be read but not written; nothing was changed.", hint
            )
        self.index.execute("BEGIN IMMEDIATE")
        try:
            shelf_index.prepared(self.index)
            journal.finish_open(self.folder)
            yield shelf_index.refreshed(self.index, self.folder)
        except BaseException:
            self._let_go()
            raise
        try:
            shelf_index.refreshed(self.index, self.folder)
            self.index.execute("COMMIT")
        except sqlite3.OperationalError:
            self._let_go()
            if for_index:
                raise
        except BaseException:
            self._let_go()
            raise

    def _let_go(self) -> None:
        if self.index.in_transaction:
            self.index.execute("ROLLBACK")

    @told
    def rebuild(self) -> int:
        """Throw the index away and make it again from the plain files; how many files were read."""
        with self.writing(for_index=True):
            shelf_index.emptied(self.index)
            return shelf_index.refreshed(self.index, self.folder)

    @told
    def stored(self) -> tuple[Stored, ...]:
        """Everything on the shelf that can be read, games first."""
        self.catch_up()
        return tuple(read_stored(self.folder, path)[0] for path in self.paths())

    @told
    def named(self, name: str) -> Stored:
        """The thing of that name: a game or remix, else a modifier."""
        self.catch_up()
        return self._named(name)

    @told
    def put(self, item: Item, origin: Origin | None = None) -> Stored:
        """Put a thing on the shelf; refused where another of its name stands there already."""
        with self.writing():
            there = self.of_key(item)
            if there is not None and there[1] != item.content:
                title = f"The shelf has {item.name} already, and it is not the same."
                raise RefusedError("S-taken", title, "Give yours another name, or merge the two.")
            if there is not None:
                return read_stored(self.folder, there[0])[0]
            self.free_path(item)
            stored = Stored(item, item.path, origin)
            journal.carry_out(self.folder, files_of(stored), f"putting {item.name} on the shelf")
            return stored

    @told
    def replace(self, item: Item) -> Stored:
        """Put a newer state of a thing in the place of the old; what it was before is kept for merging."""
        with self.writing():
            old = self._named(item.name)
            history = (*old.item.history, old.item.content, *item.history)
            newer = attrs.evolve(item, history=tuple(dict.fromkeys(each for each in history if each != item.content)))
            stored = attrs.evolve(old, item=newer)
            # What was edited by hand is kept nowhere yet but in the file that is replaced.
            journal.carry_out(self.folder, files_of(old) | files_of(stored), f"changing {item.name}")
            return stored

    @told
    def undo(self) -> journal.Change:
        """Undo the last change of games, remixes or modifiers."""
        with self.writing():
            return journal.undo(self.folder)

    @told
    def take_off(self, name: str) -> Stored:
        """Take a thing off the shelf; it can be undone."""
        with self.writing():
            stored = self._named(name)
            gone = {stored.path: None, known_path(stored.path): None}
            journal.carry_out(self.folder, gone, f"taking {stored.item.name} off the shelf")
            return stored

    @told
    def note(self, name: str, note: Note) -> Stored:
        """Keep a note with a thing."""
        with self.writing():
            stored = noted(self._named(name), note)
            write_whole(self.folder / known_path(stored.path), json_bytes(known_json(stored)))
            return stored

    @told
    def observe(self, name: str, seen: ObservedRound) -> int:
        """Keep a round that was played; how many rounds of that game are kept now. See rounds.observed."""
        with self.writing():
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

    def free_path(self, item: Item) -> str:
        """The path of a thing that is not on the shelf yet; refused where another file lies there."""
        if (self.folder / item.path).exists():
            title = f"There is a file {item.path} on the shelf that does not hold {item.name}."
            raise RefusedError("S-taken", title, "Look at it, and give it another name.")
        return item.path

    def paths(self) -> list[str]:
        """The files of everything that can be read, games first."""
        return [path for (path,) in self.index.execute("SELECT path FROM items ORDER BY kind, slug")]

    def of_key(self, item: Item) -> tuple[str, str, frozenset[str]] | None:
        """What goes by the name of a thing: its file, its content hash, and those that it had before."""
        same = "kind = 'modifier'" if item.kind == "modifier" else "kind <> 'modifier'"
        query = f"SELECT path, content, history FROM items WHERE slug = ? AND {same}"
        row = self.index.execute(query, (item.slug,)).fetchone()
        return (row[0], row[1], frozenset(row[2].split())) if row else None

    def slugs(self) -> frozenset[str]:
        """Every name that is taken, as a slug."""
        return frozenset(each for (each,) in self.index.execute("SELECT slug FROM items"))

    def _named(self, name: str) -> Stored:
        query = "SELECT path FROM items WHERE slug = ? ORDER BY kind = 'modifier'"
        row = self.index.execute(query, (slug(name),)).fetchone()
        if row is None:
            names: Iterable[str] = (each for (each,) in self.index.execute("SELECT name FROM items"))
            hint = did_you_mean(name, names) or "Look at the list of what is there."
            raise RefusedError("S-unknown", f"The shelf has nothing called `{shown(name)}`.", hint)
        return read_stored(self.folder, row[0])[0]
