"""One's own data: what the shelf knows beyond the rule sheets, given out in one file, and deleted on request."""

from __future__ import annotations

import shutil
from typing import Any

import attrs

from compose.share.pack.item import FOLDERS
from compose.share.refusal import RefusedError
from compose.share.shelf import index as shelf_index
from compose.share.shelf import journal, rounds
from compose.share.shelf.files import PAST, known_json, known_path, read_stored
from compose.share.shelf.rounds import CLASS, ObservedRound, rounds_in, table_of
from compose.share.shelf.shelf import Shelf
from compose.share.strict_json import json_bytes
from compose.share.told import outcome_of
from compose.share.whole_files import read_plain, write_whole
from grammar.finding import Outcome


def own_data(shelf: Shelf) -> Outcome[dict[str, Any]]:
    """Every observed round, note and origin on the shelf, as JSON. The rule sheets themselves go into a pack."""
    return outcome_of(shelf.folder, lambda: _own_data(shelf))


def _own_data(shelf: Shelf) -> dict[str, Any]:
    shelf.catch_up()
    played = {
        path.stem: [attrs.asdict(each) for each in rounds_in(read_plain(path, rounds.MOST_BYTES), path.name)]
        for path in sorted((shelf.folder / rounds.FOLDER).glob("*.csv"))
    }
    kept = (read_stored(shelf.folder, path)[0] for path in shelf.paths())
    things = [known_json(stored) | {"kind": stored.item.kind} for stored in kept]
    return {"format": "ruleweave own data", "version": 1, "rounds": played, "things": things}


def forget_rounds(shelf: Shelf, name: str = "", class_code: str = "") -> Outcome[int]:
    """Delete the rounds of a game, of a class, of both, or all; how many went."""
    return outcome_of(shelf.folder, lambda: _forget_rounds(shelf, name, class_code))


def _forget_rounds(shelf: Shelf, name: str, class_code: str) -> int:
    if class_code and not CLASS.fullmatch(class_code):
        raise RefusedError("O-class", f"`{class_code}` is not a class.", "Write it such as 5a.")
    gone = 0
    with shelf.writing():
        chosen = rounds.rounds_path(name).removeprefix(rounds.FOLDER + "/") if name else "*.csv"
        for path in sorted((shelf.folder / rounds.FOLDER).glob(chosen)):
            there = rounds_in(read_plain(path, rounds.MOST_BYTES), path.name)
            kept = tuple(each for each in there if not _goes(each, class_code))
            gone += len(there) - len(kept)
            table = table_of(kept)
            if table is None:
                path.unlink()
            elif len(kept) < len(there):
                write_whole(path, table)
    _leave_no_trace(shelf)
    return gone


def _goes(seen: ObservedRound, class_code: str) -> bool:
    return not class_code or seen.class_code == class_code


def forget_notes(shelf: Shelf) -> Outcome[int]:
    """Delete every note, and what is kept for undoing, which may hold notes; how many notes went."""
    return outcome_of(shelf.folder, lambda: _forget_notes(shelf))


def _forget_notes(shelf: Shelf) -> int:
    gone = 0
    with shelf.writing():
        for stored, _ in (read_stored(shelf.folder, path) for path in shelf.paths()):
            if stored.notes:
                gone += len(stored.notes)
                bare = known_json(attrs.evolve(stored, notes=()))
                write_whole(shelf.folder / known_path(stored.path), json_bytes(bare))
        journal.forget(shelf.folder)
    _leave_no_trace(shelf)
    return gone


def forget_everything(shelf: Shelf) -> Outcome[int]:
    """Delete the whole shelf: sheets, notes, rounds, what is kept for undoing; how many things were on it.

    Files that are not the shelf's are left alone. The shelf is closed by this.
    """
    return outcome_of(shelf.folder, lambda: _forget_everything(shelf))


def _forget_everything(shelf: Shelf) -> int:
    with shelf.writing():
        number: int = shelf.index.execute("SELECT count(*) FROM items").fetchone()[0]
        for inner in (*FOLDERS.values(), PAST, rounds.FOLDER, journal.FOLDER):
            if (shelf.folder / inner).is_dir():
                shutil.rmtree(shelf.folder / inner)
    shelf.close()
    for ending in ("-wal", "-shm", ""):
        (shelf.folder / f"{shelf_index.FILE}{ending}").unlink(missing_ok=True)
    return number


def _leave_no_trace(shelf: Shelf) -> None:
    """Write the index anew, so that what was deleted is in none of its pages."""
    shelf.index.execute("INSERT INTO words (words) VALUES ('rebuild')")
    shelf.index.execute("VACUUM")
    shelf.index.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
