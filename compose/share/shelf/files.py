"""The plain files of a shelf, which are its truth: a rule sheet for each thing, and beside it what is known of it.

    games/fell-gate.rules    the sheet, to read and to edit
    games/fell-gate.json     where it comes from, what it was before, notes
    remixes/, modifiers/     the same for those
    past/HASH.rules          every sheet that was ever kept here, for merging
    rounds/fell-gate.csv     observed rounds (see rounds.py)

A folder that several schools share has the same files.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import attrs

from compose.share.bounds import MOST_RULES_BYTES, read_rules
from compose.share.fields import Fields
from compose.share.lineage_json import MOST_HISTORY, MOST_NAME_LETTERS, history_from
from compose.share.pack.item import ENDING, FOLDERS, Item, Sheet, item_of, kind_of
from compose.share.refusal import RefusedError, shown
from compose.share.strict_json import json_bytes, strict_json
from compose.share.whole_files import read_plain
from grammar.frozen import frozen

MOST_KNOWN_BYTES = 256 << 10
MOST_NOTES = 500
MOST_NOTE_LETTERS = 1_000
PAST = "past"


@frozen
class Origin:
    """Where a thing came from: a school in its own words, the pack's title and hash, the day (ISO 8601)."""

    school: str
    title: str
    pack: str
    day: str

    def words(self) -> str:
        """ "from Tarn Head school in the pack Tarn Valley games, taken in on 2025-11-25"."""
        pack = f" in the pack {self.title}" if self.title else ""
        return f"from {self.school or 'somebody unnamed'}{pack}, taken in on {self.day}"


@frozen
class Note:
    """A note of the teacher's, with its day (ISO 8601)."""

    day: str
    text: str


@frozen
class Stored:
    """A thing on a shelf: what it is, the file it lies in, where it came from, and what was noted of it."""

    item: Item
    path: str
    origin: Origin | None = None
    notes: tuple[Note, ...] = ()


def known_path(path: str) -> str:
    """The file beside a rule sheet."""
    return path.removesuffix(ENDING) + ".json"


def past_path(content: str) -> str:
    """Where a sheet is kept for merging."""
    return f"{PAST}/{content}{ENDING}"


def sheet_paths(folder: Path) -> Iterator[str]:
    """The rule sheets of a shelf, games first, by name."""
    for inner in FOLDERS.values():
        where = folder / inner
        if where.is_dir():
            yield from sorted(f"{inner}/{path.name}" for path in where.iterdir() if path.name.endswith(ENDING))


def read_stored(folder: Path, path: str) -> tuple[Stored, Sheet]:
    """A thing from its files; raises RefusedError where they are not to be read, OSError where they are gone."""
    data = read_plain(folder / path, MOST_RULES_BYTES)
    sheet = read_rules(data, path)
    known = folder / known_path(path)
    beside = read_plain(known, MOST_KNOWN_BYTES) if known.is_symlink() or known.exists() else None
    kind = next(kind for kind, inner in FOLDERS.items() if path.startswith(inner + "/"))
    if kind_of(sheet) != kind:
        hint = f"Move it to {FOLDERS[kind_of(sheet)]}."
        raise RefusedError("S-folder", f"{path} holds a {kind_of(sheet)}, not a {kind}.", hint)
    stored = _with_known(sheet, path, beside)
    text = data.decode("utf-8-sig")
    return attrs.evolve(stored, item=attrs.evolve(stored.item, text=text)), sheet


def _with_known(sheet: Sheet, path: str, beside: bytes | None) -> Stored:
    if beside is None:
        return Stored(item_of(sheet), path)
    file = known_path(path)
    fields = Fields.of(strict_json(beside, file), file, "", ("name", "content", "history", "origin", "notes"))
    history = (*history_from(fields, "history"), fields.hash("content"))
    origin = None if fields.values["origin"] is None else _origin(fields.inner("origin", _ORIGIN))
    notes = fields.listed("notes", MOST_NOTES, _note)
    fields.text("name", MOST_NAME_LETTERS, 1)
    return Stored(item_of(sheet, history), path, origin, notes)


_ORIGIN = ("from", "title", "pack", "day")


def _origin(fields: Fields) -> Origin:
    return Origin(fields.text("from", 120), fields.text("title", 120), fields.hash("pack"), fields.day("day"))


def _note(listed: Fields) -> Note:
    fields = listed.inner("it", ("day", "text"))
    return Note(fields.day("day"), fields.text("text", MOST_NOTE_LETTERS, 1))


def known_json(stored: Stored) -> dict[str, Any]:
    """What is kept beside a rule sheet, as JSON."""
    item, origin = stored.item, stored.origin
    return {
        "name": item.name,
        "content": item.content,
        "history": list(item.history[-MOST_HISTORY:]),
        "origin": origin and {"from": origin.school, "title": origin.title, "pack": origin.pack, "day": origin.day},
        "notes": [{"day": note.day, "text": note.text} for note in stored.notes],
    }


def files_of(stored: Stored) -> dict[str, bytes]:
    """The files that keep a thing: its sheet, what is known of it, and its sheet for merging later."""
    data = stored.item.text.encode()
    return {
        stored.path: data,
        known_path(stored.path): json_bytes(known_json(stored)),
        past_path(stored.item.content): data,
    }


def noted(stored: Stored, note: Note) -> Stored:
    """The thing with one note more; raises RefusedError for a note that cannot be kept."""
    text = note.text.strip()
    if not 0 < len(text) <= MOST_NOTE_LETTERS or not text.isprintable():
        title = f"`{shown(text)}` cannot be noted: a note is one line of 1 to {MOST_NOTE_LETTERS} letters."
        raise RefusedError("S-note", title)
    if len(stored.notes) >= MOST_NOTES:
        raise RefusedError("S-note", f"{stored.item.name} has {MOST_NOTES} notes already.", "Delete some of them.")
    return attrs.evolve(stored, notes=(*stored.notes, Note(note.day, text)))
