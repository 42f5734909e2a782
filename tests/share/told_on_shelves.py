"""Examples of the page of codes about packs, shelves and folders that schools share, each made in an empty folder."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path
from unittest.mock import patch

from attrs import evolve
from hostile_packs import hostile
from shared_games import FELL_GATE, game_item, modifier_item, pack_of
from shelves import given, opened, pack
from site_shelf import keep

from compose.share.pack.pack import read_pack
from compose.share.pack.taking_in import take_in
from compose.share.refusal import RefusedError
from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.rounds import ObservedRound, observed, rounds_in
from compose.share.site.build import build_site
from compose.share.together.folder import common_shelf, give
from compose.share.together.git import commit
from compose.share.whole_files import trouble
from grammar.finding import Finding

Said = Iterable[Finding]
WIDER = game_item(FELL_GATE.replace("14 m by 7 m", "14 m by 8 m"))
SEEN = ObservedRound("2025-11-25", "5a", 18, 270.5, "ewes", 3, game_item().content)


def busy(folder: Path) -> Said:
    with opened(folder) as holding, opened(folder) as waiting:
        holding.index.execute("BEGIN IMMEDIATE")
        waiting.index.execute("PRAGMA busy_timeout = 50")
        said = waiting.put(game_item()).findings
        holding.index.execute("ROLLBACK")
    return said


def put_twice(folder: Path) -> Said:
    with opened(folder) as shelf:
        shelf.put(game_item())
        return (*shelf.put(WIDER).findings, *take_in(shelf, pack(pack_of(WIDER)), {}, None, "2025-11-25").findings)


def common(folder: Path) -> Said:
    """What is said of a common shelf with things that do not belong there."""
    keep(folder, game_item())
    clash = give(folder, [WIDER]).findings
    (folder / "games/huge.rules").write_bytes(b"note: x\n" * 10_000)
    (folder / "games/wrong.rules").write_text(modifier_item().text)
    (folder / "games/linked.rules").symlink_to(folder)
    return (*clash, *given(common_shelf(folder)).troubles, *commit(folder, ("x",), "x").findings)


def unreadable(folder: Path) -> Said:
    keep(folder, game_item())
    with patch("compose.share.together.folder.read_stored", side_effect=PermissionError(errno.EACCES, "Forbidden")):
        return given(common_shelf(folder)).troubles


def over_pictures(folder: Path) -> Said:
    keep(folder / "common", game_item())
    (folder / "site").mkdir()
    (folder / "site/picture.png").write_bytes(b"x")
    return build_site(folder / "common", folder / "site", "Ours").findings


def table(text: str) -> Said:
    try:
        rounds_in(text.encode(), "rounds.csv")
    except RefusedError as refusal:
        return (refusal.finding("rounds.csv"),)
    return ()


def of_disk(error: OSError | sqlite3.Error) -> Said:
    return (trouble(error, Path("shelf")).finding("shelf"),)


def at_a_file(folder: Path) -> Said:
    (folder / "file").write_text("x")
    return open_shelf(folder / "file").findings


TRICKS = {
    "P-bomb": "a bomb of one entry",
    "P-content": "a sentence that is none",
    "P-damaged": "a wrong checksum",
    "P-field": "no title",
    "P-hash": "another name in the rules",
    "P-huge": "fifty sides",
    "P-json": "a manifest of brackets",
    "P-link": "a link",
    "P-locked": "a locked entry",
    "P-manifest": "an empty zip",
    "P-name": "a file called 'run.py'",
    "P-nested": "a pack in a pack",
    "P-path": "a file called '../games/out.rules'",
    "P-size": "rules by the thousand",
    "P-twice": "a file called 'games/fell-gate.rules'",
    "P-version": "a later version",
    "P-zip": "a text",
}


@cache
def tricks() -> dict[str, tuple[bytes, str]]:
    return hostile()


def trick(code: str) -> Said:
    return read_pack(tricks()[TRICKS[code]][0], "test.zip").findings


ON_SHELVES: dict[str, Callable[[Path], Said]] = {
    **{code: lambda _, code=code: trick(code) for code in TRICKS},
    "S-busy": busy,
    "S-choose": put_twice,
    "S-taken": put_twice,
    "S-disk": at_a_file,
    "S-folder": common,
    "S-size": common,
    "S-link": common,
    "C-clash": common,
    "C-git": common,
    "S-unreadable": unreadable,
    "W-folder": over_pictures,
    "S-full": lambda _: of_disk(OSError(errno.ENOSPC, "x")),
    "S-read-only": lambda _: of_disk(OSError(errno.EROFS, "x")),
    "S-index": lambda _: of_disk(sqlite3.DatabaseError("file is not a database")),
    "O-content": lambda _: observed(evolve(SEEN, content="Anna"), ("ewes",)).findings,
    "O-pupils": lambda _: observed(evolve(SEEN, pupils=900), ("ewes",)).findings,
    "O-file": lambda _: table("2025-11-25,5a,18,270.5,ewes,3,x\n"),
}
