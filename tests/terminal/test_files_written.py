"""Files: whole or not at all, and nothing is overwritten unasked."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest
from running import run, run_json

from library import game_paths

LANTERN = next(path for path in game_paths() if path.stem == "lantern-row")
UNTIDY = LANTERN.read_text(encoding="utf-8").replace("game", "note: mine\ngame", 1).replace("  court", "\n  COURT")
WRITING = ("remix", "card")


@pytest.mark.parametrize("command", WRITING)
def test_file_that_is_there_stays_as_it_was(command: str, tmp_path: Path) -> None:
    path = tmp_path / "mine.txt"
    path.write_text("mine", encoding="utf-8")
    assert "is there already" in " ".join(run(command, "lantern row", "--out", path, code=2).output.split())
    assert path.read_text(encoding="utf-8") == "mine"
    run(command, "lantern row", "--out", path, "--force", code=0)
    assert "lantern" in path.read_text(encoding="utf-8").lower()
    assert os.listdir(tmp_path) == ["mine.txt"]


@pytest.mark.parametrize("command", WRITING)
@pytest.mark.parametrize("where", ["folder", "no folder", "below a file", "too long a name"])
def test_place_where_nothing_can_be_written(command: str, where: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", encoding="utf-8")
    places = {
        "folder": tmp_path,
        "no folder": tmp_path / "none" / "game.txt",
        "below a file": tmp_path / "file" / "game.txt",
        "too long a name": tmp_path / f"{'long' * 100}.txt",
    }
    run(command, "lantern row", "--out", places[where], code=2)
    assert os.listdir(tmp_path) == ["file"]


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write everywhere")
def test_folder_that_may_not_be_written(tmp_path: Path) -> None:
    tmp_path.chmod(stat.S_IRUSR | stat.S_IXUSR)
    try:
        run("remix", "lantern row", "--out", tmp_path / "game.rules", code=2)
    finally:
        tmp_path.chmod(stat.S_IRWXU)
    assert not os.listdir(tmp_path)


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="needs a folder that nobody may write")
def test_folder_that_nobody_may_write() -> None:
    result = run("remix", "lantern row", "--out", "/proc/ruleweave.rules", code=2)
    assert "cannot be written" in " ".join(result.output.split())


def test_tidy_prints_and_leaves_the_file_alone(tmp_path: Path) -> None:
    path = tmp_path / "game.rules"
    path.write_text(UNTIDY, encoding="utf-8")
    result = run("tidy", path, code=0)
    assert "note: mine" in result.stdout and "  court 18 m" in result.stdout
    assert path.read_text(encoding="utf-8") == UNTIDY


def test_tidy_looks_and_writes(tmp_path: Path) -> None:
    path = tmp_path / "game.rules"
    path.write_text(UNTIDY, encoding="utf-8")
    assert "is not tidy" in run("tidy", path, "--look", code=1).stdout
    run("tidy", path, "--force", code=0)
    assert "is tidy" in run("tidy", path, "--look", code=0).stdout
    assert "note: mine" in path.read_text(encoding="utf-8")
    assert run_json("tidy", path, code=0)["files"][0]["tidy"]


def test_tidy_writes_nothing_where_one_file_is_broken(tmp_path: Path) -> None:
    sound, broken = tmp_path / "a.rules", tmp_path / "b.rules"
    sound.write_text(UNTIDY, encoding="utf-8")
    broken.write_text("game A\nplay\n  blah blah\n", encoding="utf-8")
    run("tidy", sound, broken, "--force", code=2)
    assert sound.read_text(encoding="utf-8") == UNTIDY


def test_library_is_tidy() -> None:
    run("tidy", *sorted(LANTERN.parents[1].rglob("*.rules")), "--look", code=0)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs links and pipes")
def test_links_pipes_and_rights_stay_what_they_are(tmp_path: Path) -> None:
    target, link = tmp_path / "target.rules", tmp_path / "link.rules"
    link.symlink_to(target)
    run("remix", "lantern row", "--out", link, code=2)
    assert not target.exists()
    run("remix", "lantern row", "--out", link, "--force", code=0)
    assert link.is_symlink() and target.read_text(encoding="utf-8").startswith("note:")
    target.chmod(0o600)
    run("remix", "lantern row", "--out", link, "--force", code=0)
    assert stat.S_IMODE(target.stat().st_mode) == 0o600
    before = os.umask(0o077)
    try:
        run("remix", "lantern row", "--out", tmp_path / "own.rules", code=0)
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "own.rules").stat().st_mode) == 0o600
    run("remix", "lantern row", "--out", "/dev/null", code=0)
    assert stat.S_ISCHR(os.stat("/dev/null").st_mode)


@pytest.mark.parametrize("words", ['a"b', "x\n  add 3 balls", "a\x1b[2Jb", "a" * 401, "\u202eodd"])
@pytest.mark.parametrize("option", ["--title", "--about", "--credit"])
def test_what_could_not_be_read_again_is_not_written(option: str, words: str, tmp_path: Path) -> None:
    path = tmp_path / "mine.rules"
    result = run("keep", "lantern row", "--with", "roll instead", option, words, "--out", path, code=2)
    assert "read again" in result.output and "\x1b" not in result.output and "\u202e" not in result.output
    assert not path.exists()


def test_names_of_files_move_no_cursor(tmp_path: Path) -> None:
    path = tmp_path / "a\x1b[2Jb\u202ec.rules"
    path.write_text("game X", encoding="utf-8")
    assert not set("\x1b\u202e") & set(run("check", path, code=2).output)
    assert run_json("check", path, code=2)["findings"][0]["place"]["file"] == str(path)


@pytest.mark.parametrize("name", ["\u0130anterns", "la\u0301nterns"])
def test_tidied_letters_are_read_again(name: str, tmp_path: Path) -> None:
    path = tmp_path / "mine.rules"
    text = LANTERN.read_text(encoding="utf-8").replace("lanterns", name).replace("a lantern", f"a {name[:-1]}")
    path.write_text(text, encoding="utf-8")
    run("tidy", path, "--force", code=0)
    run("check", path, code=0)
