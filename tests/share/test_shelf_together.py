"""Two programs at once, a program killed at any moment, a full disk, a folder that may only be read."""

from __future__ import annotations

import errno
import os
import resource
import shutil
import sqlite3
import tempfile
import traceback
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from killed_writer import numbered, run
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item, pack_of
from shelves import contents, files, given, index_is_true, opened, pack, refusal

from compose.share.pack.taking_in import take_in
from compose.share.shelf.files import Note
from compose.share.shelf.find import Wanted, find
from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.rounds import ObservedRound
from compose.share.whole_files import trouble

DAY = "2025-11-25"
NOBODY = 65_534


def elsewhere(work: Callable[[], None]) -> int:
    """Start some work in a process of its own; its number."""
    child = os.fork()
    if child == 0:
        try:
            work()
        except BaseException:
            traceback.print_exc()
            os._exit(1)
        os._exit(0)
    return child


def ended_well(child: int) -> bool:
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that other users may enter."""
    folder = Path(tempfile.mkdtemp(prefix="shelf-"))
    folder.chmod(0o755)
    yield folder
    shutil.rmtree(folder)


def test_four_programs_write_at_once_and_nothing_is_lost(tmp_path: Path) -> None:
    def writer(who: int) -> None:
        for number in range(8):
            with opened(tmp_path) as shelf:
                seen = ObservedRound(DAY, "5a", 20, float(100 * who + number + 1), "ewes", 0, "0" * 64)
                given(shelf.observe("Fell Gate", seen))
                given(shelf.put(numbered(100 * who + number)))
                given(shelf.note(f"Gate {100 * who + number}", Note(DAY, "seen")))

    children = [elsewhere(lambda who=who: writer(who)) for who in range(4)]  # type: ignore[misc]
    assert [ended_well(child) for child in children].count(True) == len(children)
    with opened(tmp_path) as shelf:
        lengths = sorted(seen.length_s for seen in given(shelf.rounds("Fell Gate")))
        assert lengths == [float(100 * who + number + 1) for who in range(4) for number in range(8)]
        assert len(contents(shelf)) == 32 and index_is_true(shelf)


def test_two_programs_take_in_the_same_pack_at_once(tmp_path: Path) -> None:
    data = pack_of(*everything())

    def taking() -> None:
        with opened(tmp_path) as shelf:
            given(take_in(shelf, pack(data), {}, None, DAY))

    children = [elsewhere(taking) for _ in range(3)]
    assert [ended_well(child) for child in children].count(True) == len(children)
    with opened(tmp_path) as shelf:
        assert len(contents(shelf)) == 5 and index_is_true(shelf)
        given(shelf.undo())
        assert refusal(shelf.undo())[0] == "S-undo"


def test_killed_at_any_moment_it_loses_nothing_acknowledged(tmp_path: Path) -> None:
    """Ten kills; tests/benchmarks/share_kill.py does it hundreds of times."""
    counts = run(tmp_path, kills=10, seed=11)
    assert counts.kills == 10 and counts.acknowledged > 10, counts


def test_somebody_who_waits_too_long_is_told_why(tmp_path: Path) -> None:
    with opened(tmp_path) as holding, opened(tmp_path) as waiting:
        holding.index.execute("BEGIN IMMEDIATE")
        waiting.index.execute("PRAGMA busy_timeout = 50")
        code, title = refusal(waiting.put(game_item()))
        assert code == "S-busy" and "Another program" in title
        holding.index.execute("ROLLBACK")
        given(waiting.put(game_item()))


def test_a_full_disk_is_told_and_changes_nothing(tmp_path: Path) -> None:
    def trying() -> None:
        with opened(tmp_path) as shelf:
            given(shelf.put(game_item()))
            before = files(tmp_path)
            resource.setrlimit(resource.RLIMIT_FSIZE, (200, 200))
            big = game_item(TOLL_BRIDGE)
            for refused in (
                shelf.put(big),
                take_in(shelf, pack(pack_of_everything), {}, None, DAY),
                shelf.note("Fell Gate", Note(DAY, "x" * 500)),
            ):
                assert refusal(refused)[0] == "S-full", refused
            assert files(tmp_path) == before

    pack_of_everything = pack_of(*everything())
    assert ended_well(elsewhere(trying))
    with opened(tmp_path) as shelf:
        assert contents(shelf) == {"Fell Gate": game_item().content}
        assert not list(tmp_path.rglob(".writing-*")) and not list(tmp_path.rglob("*.open"))


@pytest.mark.parametrize("part", ["games", "past", "journal"])
def test_a_change_that_breaks_off_in_the_middle_is_taken_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, part: str
) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        before = files(tmp_path)
        really = os.replace

        def full(source: str | Path, target: str | Path) -> None:
            if Path(target).parent.name == part and "modifiers" not in str(target):
                raise OSError(errno.ENOSPC, "No space left on device")
            really(source, target)

        with monkeypatch.context() as patch:
            patch.setattr("compose.share.shelf.journal.os.replace", full)
            code, title = refusal(take_in(shelf, pack(pack_of(*everything()[1:])), {}, None, DAY))
        assert code == "S-full" and "nothing was changed" in title
        assert files(tmp_path) == before
    with opened(tmp_path) as shelf:
        assert files(tmp_path) == before and index_is_true(shelf)


@pytest.mark.parametrize("name", ["000002 (conflicted copy)", "000002 (conflicted copy).open", "000002.open", "notes"])
def test_what_another_program_leaves_in_the_journal_stops_nothing(tmp_path: Path, name: str) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
    (tmp_path / "journal" / name).mkdir()
    (tmp_path / "journal" / name / "after-0").write_text("somebody's")
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item(TOLL_BRIDGE)))
        given(shelf.undo())
        assert contents(shelf) == {"Fell Gate": game_item().content}
    assert [path.read_text() for path in (tmp_path / "journal").glob("*/after-0")] == ["somebody's"]


def test_a_folder_that_may_only_be_read_is_read(open_folder: Path) -> None:
    with opened(open_folder) as shelf:
        given(shelf.put(game_item()))
        given(shelf.note("Fell Gate", Note(DAY, "seen")))
    before = files(open_folder)

    def reading() -> None:
        if os.geteuid() == 0:
            os.setgid(NOBODY)
            os.setuid(NOBODY)
        with opened(open_folder) as shelf:
            assert shelf.read_only
            assert [found.name for found in given(find(shelf, Wanted(words="gate"))).fitting] == ["Fell Gate"]
            assert contents(shelf) == {"Fell Gate": game_item().content}
            for refused in (shelf.put(game_item(TOLL_BRIDGE)), shelf.undo(), shelf.note("Fell Gate", Note(DAY, "x"))):
                code, title = refusal(refused)
                assert code == "S-read-only" and "may be read but not written" in title

    for path in (open_folder, *open_folder.rglob("*")):
        path.chmod(0o555 if path.is_dir() else 0o444)
    assert ended_well(elsewhere(reading))
    for path in (open_folder, *(path for path in open_folder.rglob("*") if path.is_dir())):
        path.chmod(0o755)
    assert files(open_folder) == before


def test_a_place_where_no_shelf_can_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    code, title = refusal(open_shelf(tmp_path / "file"))
    assert code == "S-disk" and "cannot be used" in title
    assert refusal(open_shelf(tmp_path / "file/inner"))[0] == "S-disk"


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (OSError(errno.ENOSPC, "x"), "S-full"),
        (OSError(errno.EDQUOT, "x"), "S-full"),
        (OSError(errno.EROFS, "x"), "S-read-only"),
        (OSError(errno.EIO, "Input/output error"), "S-disk"),
        (sqlite3.DatabaseError("file is not a database"), "S-index"),
    ],
)
def test_trouble_is_told_in_plain_words(error: OSError | sqlite3.Error, code: str) -> None:
    refused = trouble(error, Path("shelf"))
    assert refused.code == code and refused.title.endswith(".")


def test_an_index_without_room_neither_loses_work_nor_says_it_was_not_done(tmp_path: Path) -> None:
    text = FELL_GATE.replace("care\n", "care\n" + "".join(f'  "Caution {n} of many."\n' for n in range(150)))
    long_gate = game_item(text.replace("Fell Gate", "Long Gate"))
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        pages = shelf.index.execute("PRAGMA page_count").fetchone()[0]
        shelf.index.execute(f"PRAGMA max_page_count = {pages}")
        given(shelf.put(long_gate))
        assert refusal(shelf.stored())[0] == "S-full"
    with opened(tmp_path) as shelf:
        assert contents(shelf) == {"Fell Gate": game_item().content, "Long Gate": long_gate.content}
        assert index_is_true(shelf)
