"""What was begun and stopped is carried out, as often as it is begun anew; what cannot be read is told."""

from __future__ import annotations

import io
import os
import zipfile
from pathlib import Path

import pytest
from hostile_packs import RULES, with_rules
from shared_games import FELL_GATE, everything, game_item, pack_of
from shelves import given

from compose.share.pack.pack import read_pack
from compose.share.shelf import journal
from compose.share.together.folder import common_shelf, give, packed_from


class Stream(io.BytesIO):
    """Cannot be sought in, so that sizes are written behind what they are of."""

    def seekable(self) -> bool:
        return False

    def seek(self, *_: object) -> int:
        raise OSError


def streamed(pack: bytes) -> bytes:
    held = Stream()
    with zipfile.ZipFile(io.BytesIO(pack)) as archive, zipfile.ZipFile(held, "w") as written:
        for name in archive.namelist():
            written.writestr(zipfile.ZipInfo(name), archive.read(name))
    return held.getvalue()


def test_sizes_behind_an_entry_are_held_against_the_list_of_contents() -> None:
    sound = streamed(pack_of(game_item()))
    assert read_pack(sound, "streamed").value is not None
    marks = [at for at in range(len(sound)) if sound.startswith(b"PK\7\x08", at)]
    assert marks
    for at in marks:
        for byte in range(at + 4, at + 16):
            wrong = sound[:byte] + bytes([sound[byte] ^ 1]) + sound[byte + 1 :]
            assert read_pack(wrong, "streamed").value is None


def test_what_is_refused_is_told_with_its_line_and_its_field() -> None:
    lines = FELL_GATE.splitlines()
    number = next(at for at, line in enumerate(lines, 1) if line.strip().startswith("court"))
    for at, instead in ((number, "  court of many trees"), (number - 1, "spaze")):
        wrong = "\n".join([*lines[: at - 1], instead, *lines[at:]])
        found = read_pack(with_rules(wrong.encode()), "pack")
        assert found.value is None and f"{RULES}, line {at}:" in found.findings[0].title
    unknown = read_pack(with_rules(FELL_GATE.encode(), colour="red"), "pack")
    assert unknown.value is None and "colour" in unknown.findings[0].title


def test_a_change_that_was_stopped_after_any_step_is_carried_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    journal.carry_out(tmp_path, {"games/one": b"1", "games/two": b"2"}, "both")
    kept = os.replace

    def replace(source: Path, target: Path) -> None:
        if str(source).endswith(".open"):
            raise KeyboardInterrupt
        kept(source, target)

    with monkeypatch.context() as patched, pytest.raises(KeyboardInterrupt):
        patched.setattr(os, "replace", replace)
        journal.carry_out(tmp_path, {"games/one": None, "games/two": None}, "neither")
    assert journal.stands_open(tmp_path) and not (tmp_path / "games/one").exists()
    assert journal.finish_open(tmp_path) == 1 and not journal.stands_open(tmp_path)
    assert [each.label for each in journal.changes(tmp_path)] == ["both", "neither"]


def test_an_entry_of_the_journal_that_is_not_whole_is_set_aside(tmp_path: Path) -> None:
    journal.carry_out(tmp_path, {"games/one": b"1"}, "one")
    (tmp_path / journal.FOLDER / "000099.open").mkdir()
    assert journal.finish_open(tmp_path) == 1 and not journal.stands_open(tmp_path)
    assert [path.name for path in (tmp_path / journal.FOLDER).glob("set-aside-*")] == ["set-aside-000099-1"]


def test_a_common_shelf_is_packed_under_its_name_and_what_cannot_be_read_is_told(tmp_path: Path) -> None:
    common = tmp_path / "our tarn"
    common.mkdir()
    given(give(common, everything()))
    assert given(packed_from(common, ())).title == "our tarn"
    (common / "games/fell-gate.json").unlink()
    (common / "games/fell-gate.json").mkdir()
    told = common_shelf(common).value
    assert told is not None and [each.code for each in told.troubles] and "errno" not in str(told.troubles).lower()
