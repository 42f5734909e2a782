"""The index of a shelf in SQLite, for finding: made from the plain files, and made again whenever they change.

Nothing is only in here. SQLite's write-ahead log lets one program write while others read; the write lock
of the index is also the lock of the plain files.
"""

from __future__ import annotations

import os
import sqlite3
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

from compose.modifiers.content_hash import content_hash
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import played
from compose.share.pack.item import ENDING, FOLDERS
from compose.share.refusal import RefusedError
from compose.share.shelf import rounds
from compose.share.shelf.files import Stored, known_path, read_stored
from compose.share.whole_files import read_plain
from compose.staging.resolved import resolved
from compose.staging.teams import least_pupils, most_pupils
from grammar.game import Game
from grammar.tree import GameSheet, RemixSheet

FILE = "shelf.sqlite"
VERSION = 2
BUSY_S = 20.0
_TABLES = """
CREATE TABLE files (path TEXT PRIMARY KEY, signature TEXT NOT NULL);
CREATE TABLE items (
  id INTEGER PRIMARY KEY, path TEXT UNIQUE NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, slug TEXT NOT NULL,
  content TEXT NOT NULL, plays TEXT NOT NULL, history TEXT NOT NULL, about TEXT NOT NULL, licence TEXT,
  origin TEXT NOT NULL, lineage TEXT NOT NULL,
  ages_least REAL, ages_most REAL, players_least INTEGER, players_most INTEGER, long_m REAL, wide_m REAL);
CREATE TABLE tags (item INTEGER NOT NULL REFERENCES items ON DELETE CASCADE, sort TEXT NOT NULL, word TEXT NOT NULL);
CREATE INDEX tags_by_item ON tags (item);
CREATE TABLE troubles (path TEXT PRIMARY KEY, code TEXT NOT NULL, title TEXT NOT NULL, hint TEXT NOT NULL);
CREATE TABLE rounds (path TEXT NOT NULL, day TEXT NOT NULL, class_code TEXT NOT NULL, pupils INTEGER NOT NULL,
  length_s REAL NOT NULL, winner TEXT NOT NULL, waited INTEGER NOT NULL, content TEXT NOT NULL);
CREATE INDEX rounds_by_content ON rounds (content);
CREATE TABLE verdicts (content TEXT PRIMARY KEY, to_mend INTEGER NOT NULL, whole INTEGER NOT NULL);
CREATE VIRTUAL TABLE words USING fts5 (name, about, skills, kit, rules, notes,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3');
CREATE VIRTUAL TABLE known_words USING fts5vocab (words, col);
"""
_NAMES = ("known_words", "words", "verdicts", "rounds", "troubles", "tags", "items", "files")


def connected(folder: Path) -> sqlite3.Connection:
    """A connection to the index of a shelf; raises sqlite3.Error or OSError."""
    folder.mkdir(parents=True, exist_ok=True)
    connection = sqlite3.connect(folder / FILE, timeout=BUSY_S, isolation_level=None)
    try:
        _write_ahead(connection)
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA secure_delete = ON")
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def _write_ahead(connection: sqlite3.Connection) -> None:
    """Switch to the write-ahead log; SQLite does not wait for others here, so this does."""
    until = time.monotonic() + BUSY_S
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as error:
            if "locked" not in str(error) or time.monotonic() > until:
                raise
            time.sleep(0.02)


def in_memory() -> sqlite3.Connection:
    """An index of its own for a shelf that may only be read."""
    connection = sqlite3.connect(":memory:", isolation_level=None)
    connection.execute("PRAGMA foreign_keys = ON")
    return connection


def prepared(connection: sqlite3.Connection) -> None:
    """Make the tables, and make them anew where they are of another version of this program."""
    version = connection.execute("PRAGMA user_version").fetchone()[0]
    if version == VERSION:
        return
    emptied(connection)


def emptied(connection: sqlite3.Connection) -> None:
    """Throw away everything in the index."""
    for name in _NAMES:
        connection.execute(f"DROP TABLE IF EXISTS {name}")
    for statement in _TABLES.split(";"):
        if statement.strip():
            connection.execute(statement)
    connection.execute(f"PRAGMA user_version = {VERSION}")


def stale(connection: sqlite3.Connection, folder: Path) -> bool:
    """Whether plain files came, went or changed since the index was made."""
    if connection.execute("PRAGMA user_version").fetchone()[0] != VERSION:
        return True
    return dict(connection.execute("SELECT path, signature FROM files")) != _signatures(folder)


def refreshed(connection: sqlite3.Connection, folder: Path) -> int:
    """Bring the index up to the plain files; how many of them had changed."""
    known = dict(connection.execute("SELECT path, signature FROM files"))
    found = _signatures(folder)
    changed = {path for path in known.keys() | found.keys() if known.get(path) != found.get(path)}
    if any(not path.startswith(rounds.FOLDER) for path in changed):
        # What a remix makes hangs on its base and on modifiers.
        changed |= {path for path in found if path.startswith(FOLDERS["remix"])}
    for path in sorted(changed, key=lambda path: (path.startswith(FOLDERS["remix"]), path)):
        _forget(connection, path)
        if path not in found:
            continue
        try:
            _read(connection, folder, path)
        except FileNotFoundError:
            continue
        except OSError as error:
            why = (error.strerror or str(error)).lower()
            _trouble(connection, path, RefusedError("S-unreadable", f"{path} cannot be read: {why}."))
        except RefusedError as refusal:
            _trouble(connection, path, refusal)
        connection.execute("INSERT INTO files VALUES (?, ?)", (path, found[path]))
    return len(changed)


def _trouble(connection: sqlite3.Connection, path: str, refusal: RefusedError) -> None:
    told = (path, refusal.code, refusal.title, refusal.hint)
    connection.execute("INSERT INTO troubles VALUES (?, ?, ?, ?)", told)


def _signatures(folder: Path) -> Mapping[str, str]:
    """Each sheet and each file of rounds, with what changes when it is written."""
    found: dict[str, str] = {}
    for inner in (*FOLDERS.values(), rounds.FOLDER):
        stats = {entry.name: _signature(entry) for entry in _entries(folder / inner)}
        for name, signature in stats.items():
            if name.endswith(ENDING):
                found[f"{inner}/{name}"] = f"{signature} {stats.get(known_path(name), '')}"
            elif inner == rounds.FOLDER and name.endswith(".csv"):
                found[f"{inner}/{name}"] = signature
    return found


def _entries(folder: Path) -> Iterator[os.DirEntry[str]]:
    if folder.is_dir():
        with os.scandir(folder) as entries:
            yield from entries


def _signature(entry: os.DirEntry[str]) -> str:
    stat = entry.stat(follow_symlinks=False)
    return f"{stat.st_size}:{stat.st_mtime_ns}:{stat.st_ino}"


def _forget(connection: sqlite3.Connection, path: str) -> None:
    for (number,) in connection.execute("SELECT id FROM items WHERE path = ?", (path,)).fetchall():
        connection.execute("DELETE FROM words WHERE rowid = ?", (number,))
        connection.execute("DELETE FROM items WHERE id = ?", (number,))
    for table in ("files", "troubles", "rounds"):
        connection.execute(f"DELETE FROM {table} WHERE path = ?", (path,))


def _read(connection: sqlite3.Connection, folder: Path, path: str) -> None:
    if path.startswith(rounds.FOLDER + "/"):
        lines = rounds.rounds_in(read_plain(folder / path, rounds.MOST_BYTES), path)
        rows = [
            (path, each.day, each.class_code, each.pupils, each.length_s, each.winner, each.waited, each.content)
            for each in lines
        ]
        connection.executemany("INSERT INTO rounds VALUES (?, ?, ?, ?, ?, ?, ?, ?)", rows)
        return
    stored, sheet = read_stored(folder, path)
    where = "SELECT kind = 'modifier', slug, path FROM items"
    files = {(bool(modifier), slug): file for modifier, slug, file in connection.execute(where)}
    game = played(sheet, FolderAtHand(folder, files)).value if isinstance(sheet, GameSheet | RemixSheet) else None
    _put(connection, stored, game)


def _put(connection: sqlite3.Connection, stored: Stored, game: Game | None) -> None:
    item = stored.item
    origin = stored.origin.words() if stored.origin else ""
    lineage = item.lineage.words() if item.lineage else ""
    history = " ".join(item.history)
    plays = content_hash(game.sheet) if game else ""
    said = (item.kind, item.name, item.slug, item.content, plays, history, item.about, item.licence)
    numbers = _numbers(game) if game else (None,) * 6
    number = connection.execute(
        "INSERT INTO items (path, kind, name, slug, content, plays, history, about, licence, origin, lineage,"
        " ages_least, ages_most, players_least, players_most, long_m, wide_m)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (stored.path, *said, origin, lineage, *numbers),
    ).lastrowid
    skills, kit = (_skills(game), _kit(game)) if game else ([], [])
    tags = [(number, "skill", word) for word in skills] + [(number, "kit", word) for word in kit]
    connection.executemany("INSERT INTO tags VALUES (?, ?, ?)", tags)
    notes = " ".join(note.text for note in stored.notes)
    things = " ".join(kit).replace("|", " ")
    texts = (number, item.name, item.about, " ".join(skills), things, item.text, notes)
    connection.execute(
        "INSERT INTO words (rowid, name, about, skills, kit, rules, notes) VALUES (?, ?, ?, ?, ?, ?, ?)", texts
    )


def _numbers(game: Game) -> tuple[float, ...]:
    return (*game.ages_years, least_pupils(game), most_pupils(game), *game.court_m)


def _skills(game: Game) -> list[str]:
    return list(resolved(game).facts.skills)


def _kit(game: Game) -> list[str]:
    """Each line of kit as its name, what it is like, and its category."""
    return [f"{line.name}|{line.like}|{line.category}" for line in game.kit]
