"""Several files of a shelf changed as one: all of them or none, through any crash, and undone on request.

A change is first written down beside the files, with their bytes before and after. Renaming that folder
to NUMBER.open is the moment it counts: whoever opens the shelf next carries out what stands open. When all
files are in place it is renamed to NUMBER. Only whoever holds the shelf's lock may call these functions.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import tempfile
from collections.abc import Mapping
from itertools import count
from pathlib import Path

from compose.share.fields import Fields
from compose.share.refusal import RefusedError
from compose.share.strict_json import json_bytes, strict_json
from compose.share.whole_files import keep_folder, write_whole
from grammar.frozen import frozen

FOLDER = "journal"
KEPT = 30
_OPEN = ".open"
_GONE = ".gone-"
_ASIDE = "set-aside-"
_ENTRY = re.compile(r"[0-9]{6,}")
_MOST_FILES = 8_000


@frozen
class Change:
    """A change that was carried out: its number, what it was, which change it undid, and each file's hash
    before and after (None where there was, or is, no file)."""

    number: str
    label: str
    undoes: str
    files: tuple[tuple[str, str | None, str | None], ...]


def carry_out(folder: Path, after: Mapping[str, bytes | None], label: str, undoes: str = "") -> Change:
    """Give files of a shelf new bytes, or take them away (None). Raises OSError; then all is as it was."""
    journal = folder / FOLDER
    for needed in {journal, *((folder / path).parent for path in after)}:
        needed.mkdir(parents=True, exist_ok=True)
    number = _next_number(journal)
    staged = Path(tempfile.mkdtemp(prefix=_GONE, dir=journal))
    try:
        change = _written_down(folder, staged, after, Change(number, label, undoes, ()))
        keep_folder(staged)
        os.replace(staged, journal / f"{number}{_OPEN}")
    except BaseException:
        shutil.rmtree(staged, ignore_errors=True)
        raise
    keep_folder(journal)
    try:
        _put_in_place(folder, change)
    except OSError:
        _take_back(folder, change)
        raise
    _prune(journal)
    return change


def _written_down(folder: Path, staged: Path, after: Mapping[str, bytes | None], change: Change) -> Change:
    files = []
    for index, (path, new) in enumerate(sorted(after.items())):
        old = _bytes(folder / path)
        for name, data in (("before", old), ("after", new)):
            if data is not None:
                write_whole(staged / f"{name}-{index}", data)
        files.append((path, _hash(old), _hash(new)))
    written = Change(change.number, change.label, change.undoes, tuple(files))
    plan = {
        "label": written.label,
        "undoes": written.undoes,
        "files": [{"path": path, "before": before, "after": new} for path, before, new in written.files],
    }
    write_whole(staged / "plan.json", json_bytes(plan))
    return written


def _put_in_place(folder: Path, change: Change) -> None:
    """Move what is written down to where it belongs; moved files are left alone, so this can be done twice."""
    entry = folder / FOLDER / f"{change.number}{_OPEN}"
    for index, (path, _, after) in enumerate(change.files):
        target, waiting = folder / path, entry / f"after-{index}"
        target.parent.mkdir(parents=True, exist_ok=True)
        if after is None:
            target.unlink(missing_ok=True)
        elif waiting.exists():
            os.replace(waiting, target)
    for parent in {(folder / path).parent for path, _, _ in change.files}:
        keep_folder(parent)
    os.replace(entry, entry.with_name(change.number))
    keep_folder(entry.parent)


def _take_back(folder: Path, change: Change) -> None:
    """Put everything back as it was before a change that could not be carried out."""
    entry = folder / FOLDER / f"{change.number}{_OPEN}"
    for index, (path, _, _) in enumerate(change.files):
        old = _bytes(entry / f"before-{index}")
        if old is None:
            (folder / path).unlink(missing_ok=True)
        elif _bytes(folder / path) != old:
            write_whole(folder / path, old)
    _drop(entry)


def _drop(entry: Path) -> None:
    """Delete a folder of the journal; after a crash it no longer counts, whatever is left of it."""
    gone = entry.with_name(f"{_GONE}{entry.name}")
    os.replace(entry, gone)
    shutil.rmtree(gone)


def finish_open(folder: Path) -> int:
    """Carry out what stood open when somebody was stopped, and sweep up; how many changes stood open."""
    for leftover in folder.glob("*/.writing-*"):
        leftover.unlink(missing_ok=True)
    journal = folder / FOLDER
    if not journal.is_dir():
        return 0
    for begun in journal.glob(f"{_GONE}*"):
        shutil.rmtree(begun)
    waiting = _entries(journal, _OPEN)
    for entry in waiting:
        try:
            change = _read(entry)
        except (RefusedError, FileNotFoundError):
            # Nothing of ours leaves such an entry, for it is renamed when it is whole: a program that keeps folders
            # in step has been here. What it holds is kept, and the shelf stays as it is.
            os.replace(entry, _free(journal / f"{_ASIDE}{entry.name.removesuffix(_OPEN)}"))
            continue
        _put_in_place(folder, change)
    return len(waiting)


def _entries(journal: Path, ending: str = "") -> list[Path]:
    """The journal's own folders, in order; a copy that another program has renamed is none."""
    found = journal.glob(f"[0-9]*{ending}")
    return sorted(path for path in found if _ENTRY.fullmatch(path.name[: -len(ending) or None]))


def _free(path: Path) -> Path:
    numbered = (path.with_name(f"{path.name}-{number}") for number in count(1))
    return next(each for each in numbered if not each.exists())


def stands_open(folder: Path) -> bool:
    """Whether somebody was stopped in the middle of a change."""
    return bool(_entries(folder / FOLDER, _OPEN))


def changes(folder: Path) -> tuple[Change, ...]:
    """The changes carried out here, the oldest first, as far back as they are kept."""
    return tuple(_read(entry) for entry in _entries(folder / FOLDER))


def undo(folder: Path) -> Change:
    """Undo the last change that is not undone yet; raises RefusedError where there is none, or where its
    files are no longer as it left them."""
    done = changes(folder)
    undone = {change.undoes for change in done}
    last = next((each for each in reversed(done) if each.number not in undone and not each.undoes), None)
    if last is None:
        raise RefusedError("S-undo", "There is nothing to undo.")
    entry = folder / FOLDER / last.number
    before: dict[str, bytes | None] = {}
    for index, (path, _, after) in enumerate(last.files):
        if _hash(_bytes(folder / path)) != after:
            raise RefusedError("S-undo", f"{path} was changed since, so {last.label} cannot be undone.")
        before[path] = _bytes(entry / f"before-{index}")
    return carry_out(folder, before, f"undoing {last.label}", last.number)


def forget(folder: Path) -> None:
    """Delete what is kept for undoing."""
    finish_open(folder)
    for entry in _entries(folder / FOLDER):
        _drop(entry)


def _read(entry: Path) -> Change:
    file = f"{FOLDER}/{entry.name}/plan.json"
    data = (entry / "plan.json").read_bytes()
    fields = Fields.of(strict_json(data, file), file, "", ("label", "undoes", "files"))
    files = fields.listed("files", _MOST_FILES, _file)
    return Change(entry.name.removesuffix(_OPEN), fields.text("label", 400), fields.text("undoes", 20), files)


def _file(listed: Fields) -> tuple[str, str | None, str | None]:
    fields = listed.inner("it", ("path", "before", "after"))
    path = fields.text("path", 200, 1)
    if path.startswith("/") or ".." in path or "\\" in path or ":" in path:
        raise fields.refuse("path", "leads out of the shelf")
    before, after = (None if fields.values[key] is None else fields.hash(key) for key in ("before", "after"))
    return path, before, after


def _next_number(journal: Path) -> str:
    numbers = [int(path.name.removesuffix(_OPEN)) for path in (*_entries(journal), *_entries(journal, _OPEN))]
    return f"{max(numbers, default=0) + 1:06d}"


def _prune(journal: Path) -> None:
    for old in _entries(journal)[:-KEPT]:
        _drop(old)


def _bytes(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() else None


def _hash(data: bytes | None) -> str | None:
    return None if data is None else hashlib.sha256(data).hexdigest()
