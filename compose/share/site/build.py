"""Plain files of a shelf to the files of a site; what did not change since the last time is left as it is."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

from compose.draw.card.text import text_of
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import AtHand, parts_of
from compose.share.pack.item import ENDING, FOLDERS, KINDS, item_of
from compose.share.pack.pack import make_pack
from compose.share.refusal import RefusedError
from compose.share.shelf.files import known_path, read_stored, sheet_paths
from compose.share.site.list_page import list_page, row_of
from compose.share.site.outline import look, search_script
from compose.share.site.thing_page import Thing, thing_of, thing_page
from compose.share.told import outcome_of
from compose.share.whole_files import trouble, write_whole
from grammar.finding import Outcome
from grammar.frozen import frozen

MEMORY = "built.json"
VERSION = 2
FEW = 24
Progress = Callable[[int, int], None]


@frozen
class Built:
    """What was done: pages made, left as they were, taken away; things that could not be read, with the reason."""

    made: int
    kept: int
    gone: int
    refused: tuple[tuple[str, str], ...]


@frozen
class _Made:
    """What one thing became: its files and its row in the list, or why it was refused."""

    path: str
    files: Mapping[str, bytes]
    row: dict[str, Any]
    refused: str = ""


def build_site(
    folder: Path, out: Path, title: str, pdf: bool = False, progress: Progress = lambda done, of: None
) -> Outcome[Built]:
    """Make, or bring up to date, the site of the shelf in `folder`. `out` is a new folder, or one of a site.

    With `pdf` each card is there as PDF, too, which takes some three times as long.
    """
    return outcome_of(out, lambda: _build_or_tell(folder, out, title, pdf, progress))


def _build_or_tell(folder: Path, out: Path, title: str, pdf: bool, progress: Progress) -> Built:
    try:
        return _build(folder, out, title, pdf, progress)
    except OSError as error:
        raise trouble(error, out, "the page is not finished: what is made is whole, the rest is not there") from None


def _build(folder: Path, out: Path, title: str, pdf: bool, progress: Progress) -> Built:
    before = _memory(out)
    if not (out / MEMORY).is_file():
        _write(out, {MEMORY: _memory_bytes(before)})
    prints = _prints(folder, f"{title} {pdf}")
    waiting = [path for path, print_ in prints.items() if before.get(path, {}).get("print") != print_]
    memory = {path: told for path, told in before.items() if path in prints and path not in waiting}
    refused: list[tuple[str, str]] = []
    progress(0, len(waiting))
    for done, made in enumerate(_made(folder, waiting, title, pdf), start=1):
        if made.refused:
            refused.append((made.path, made.refused))
        _write(out, made.files)
        memory[made.path] = {"print": prints[made.path], "files": sorted(made.files), "row": made.row}
        progress(done, len(waiting))
    gone = _sweep(out, before, memory)
    rows = sorted(
        (told["row"] for told in memory.values() if told["row"]),
        key=lambda row: (row["name"].casefold(), KINDS.index(row["kind"])),
    )
    _write(out, {"index.html": list_page(title, rows, ()), MEMORY: _memory_bytes(memory)})
    return Built(len(waiting) - len(refused), len(prints) - len(waiting), gone, tuple(refused))


def _memory(out: Path) -> dict[str, Any]:
    """What was built here before; raises RefusedError for a folder with other things in it."""
    try:
        told = json.loads((out / MEMORY).read_bytes())
    except (OSError, ValueError, RecursionError):
        told = None
    if isinstance(told, dict) and isinstance(told.get("things"), dict) and told == signed(told["things"]):
        return dict(told["things"])
    if out.is_dir() and any(out.iterdir()) and not (out / MEMORY).is_file():
        raise RefusedError("W-folder", f"`{out}` holds other things than a page.", "Name a new folder.")
    return {}


def _memory_bytes(things: Mapping[str, Any]) -> bytes:
    return json.dumps(signed(things), ensure_ascii=False, sort_keys=True).encode()


def signed(things: Mapping[str, Any]) -> dict[str, Any]:
    """What was built, with its sum: a list that anything else has changed is made anew."""
    text = json.dumps(things, ensure_ascii=False, sort_keys=True)
    return {"version": VERSION, "things": things, "sum": hashlib.sha256(text.encode("utf-8", "replace")).hexdigest()}


def _prints(folder: Path, title: str) -> dict[str, str]:
    """What each thing's page is made of, as a hash; a remix hangs on everything that it may be made of."""
    prints = {path: _print(folder, path, title) for path in sheet_paths(folder)}
    everything = hashlib.sha256("".join(prints.values()).encode()).hexdigest()
    return {
        path: print_ + everything if path.startswith(FOLDERS["remix"]) else print_ for path, print_ in prints.items()
    }


def _print(folder: Path, path: str, title: str) -> str:
    """A hash of everything that a thing's page is made of."""
    print_ = hashlib.sha256(f"{VERSION} {title}\0{look()}\0{search_script()}\0".encode())
    for file in (path, known_path(path)):
        where = folder / file
        print_.update(where.read_bytes() if where.is_file() and not where.is_symlink() else b"")
        print_.update(b"\0")
    return print_.hexdigest()


def _made(folder: Path, paths: list[str], title: str, pdf: bool) -> Iterator[_Made]:
    """The things as pages, in their order; many are made on all cores."""
    work = [(folder, path, title, pdf) for path in paths]
    cores = os.cpu_count() or 1
    if len(work) <= FEW or cores == 1:
        yield from map(_make, work)
        return
    with ProcessPoolExecutor(cores) as pool:
        yield from pool.map(_make, work, chunksize=8)


def _make(work: tuple[Path, str, str, bool]) -> _Made:
    folder, path, title, pdf = work
    try:
        stored, sheet = read_stored(folder, path)
    except (RefusedError, OSError) as error:
        return _Made(path, {}, {}, str(error))
    thing = thing_of(stored, sheet, FolderAtHand(folder))
    stem = path.removesuffix(ENDING)
    found = list(_downloads(thing, FolderAtHand(folder), title, pdf))
    words = tuple((said, f"../{inner}/{stem}{ending}") for said, inner, ending, _ in found)
    files = {f"{inner}/{stem}{ending}": data for _, inner, ending, data in found}
    files[f"{stem}.html"] = thing_page(thing, title, words)
    return _Made(path, files, row_of(thing, f"{stem}.html"))


def _downloads(thing: Thing, at_hand: AtHand, title: str, pdf: bool) -> Iterator[tuple[str, str, str, bytes]]:
    """What can be downloaded: in words, in which folder, with which ending, the bytes."""
    parts = [item_of(part) for part in parts_of([thing.sheet], at_hand)]
    packed = make_pack([thing.item, *parts], thing.item.name, title[:120])
    if packed.value is not None:
        yield "The pack, to take in", "packs", ".zip", packed.value
    yield "The rule sheet, as text", "sheets", ENDING, thing.item.text.encode()
    if thing.card is None or thing.plan is None:
        return
    yield "The card, as text", "cards", ".txt", text_of(thing.card).encode()
    yield "The plan, as a drawing", "plans", ".svg", thing.plan.encode()
    if pdf:
        from compose.draw.card.pdf import pdf_of

        printed = pdf_of(thing.card)
        if printed.value is not None:
            yield "The card, to print", "cards", ".pdf", printed.value


def _write(out: Path, files: Mapping[str, bytes]) -> None:
    for name, data in files.items():
        path = out / name
        path.parent.mkdir(parents=True, exist_ok=True)
        if not path.is_file() or path.read_bytes() != data:
            # What a crash takes is made again: the memory, written last, does not know it yet.
            write_whole(path, data, lasting=False)


def _sweep(out: Path, before: Mapping[str, Any], now: Mapping[str, Any]) -> int:
    """Take away the files of things that went; how many things went."""
    kept = {file for told in now.values() for file in told["files"]}
    for told in before.values():
        for file in told["files"]:
            if file not in kept and ".." not in file and not Path(file).is_absolute():
                (out / file).unlink(missing_ok=True)
    return len(before.keys() - now.keys())
