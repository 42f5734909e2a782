"""Bad input: a clear message, exit code 2, no traceback, nothing written."""

from __future__ import annotations

from pathlib import Path
from time import process_time

import pytest
from mutations import hostile_files
from running import OF_A_GAME, REPORTING, run, run_json

import library

of_a_game = pytest.mark.parametrize("command", OF_A_GAME)
MOST_SECONDS = 8  # of processor time; nobody waits longer for a file that means no good
WITH_MODIFIERS = [command for command in OF_A_GAME if command not in ("show",)]


@of_a_game
def test_unknown_game_offers_the_nearest(command: str) -> None:
    result = run(command, "lantern rwo", code=2)
    assert "lantern row" in result.output


@pytest.mark.parametrize("command", [command for command in OF_A_GAME if command in REPORTING])
def test_unknown_game_is_told_in_json_too(command: str) -> None:
    answer = run_json(command, "lantern rwo", code=2)
    assert answer["findings"][0]["severity"] == "error"


@pytest.mark.parametrize("kind", ["missing", "folder", "below a file", "empty", "binary", "too long a name"])
def test_file_that_cannot_be_read(kind: str, tmp_path: Path) -> None:
    paths = {
        "missing": tmp_path / "nothing.rules",
        "folder": tmp_path / "folder.rules",
        "below a file": tmp_path / "empty.rules" / "game.rules",
        "empty": tmp_path / "empty.rules",
        "binary": tmp_path / "binary.rules",
        "too long a name": tmp_path / f"{'long' * 100}.rules",
    }
    paths["folder"].mkdir()
    paths["empty"].write_bytes(b"")
    paths["binary"].write_bytes(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR")
    result = run("check", paths[kind], code=2)
    assert paths[kind].name[:40] in "".join(result.output.split())


@pytest.mark.parametrize("name", [name for name in sorted(hostile_files()) if not name.endswith("s of 1 MiB")])
def test_hostile_file(name: str, tmp_path: Path) -> None:
    path = tmp_path / "hostile.rules"
    path.write_bytes(hostile_files()[name])
    begun = process_time()
    result = run("check", path)
    assert process_time() - begun < MOST_SECONDS
    assert all(len(line) <= 80 for line in result.output.splitlines())
    assert not any(letter in result.output for letter in "\x1b\u202e\u200f\0")


def test_all_mistakes_of_a_file_are_shown(tmp_path: Path) -> None:
    path = tmp_path / "broken.rules"
    path.write_text("game A\n  ages 8 perhaps\n\nspace\n  court 18 m long\n", encoding="utf-8")
    result = run("check", path, code=2)
    assert "line 2" in result.output and "line 5" in result.output


def test_slips_do_not_hide_mistakes_of_meaning(tmp_path: Path) -> None:
    """A name that means nothing is told beside a word that is no word, each with what to write."""
    path = tmp_path / "wrong.rules"
    sheet = next(each for each in library.game_paths() if each.stem == "lantern-row").read_text(encoding="utf-8")
    path.write_text(sheet.replace("in each half", "in each haf").replace("overarm throw a", "overarm thow a"), "utf-8")
    output = run("check", path, code=2).output
    assert "4 foam balls in each half" in output and "players overarm throw a foam ball" in output
    assert "2 mistakes" in output


@pytest.mark.parametrize("command", WITH_MODIFIERS)
def test_unknown_modifier_offers_the_nearest(command: str) -> None:
    assert "kick instead" in run(command, "lantern row", "--with", "kick insted", code=2).output


@pytest.mark.parametrize("command", WITH_MODIFIERS)
def test_clashing_modifiers(command: str) -> None:
    result = run(command, "lantern row", "--with", "kick instead", "--with", "roll instead", code=2)
    assert "do not go together" in result.output


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("add balls, n 99", "cannot be 99"),
        ("add balls, n 2.5", "whole number"),
        ("add balls, m 2", "takes no `m`"),
        ("add balls, n many", "is not a value"),
        ("add balls, n 2 m", "cannot be 2 m"),
        ("kick instead, n 2", "takes no `n`"),
        ("nobody is out", "does not fit"),
        (",", "no modifier"),
    ],
)
def test_bad_values(written: str, said: str) -> None:
    assert said in " ".join(run("remix", "lantern row", "--with", written, code=2).output.split())


@pytest.mark.parametrize("pupils", ["0", "401", "many"])
def test_bad_number_of_pupils(pupils: str) -> None:
    run("check", "lantern row", "--pupils", pupils, code=2)


def test_pupils_whom_the_game_does_not_take() -> None:
    assert "at least 12 pupils" in run("check", "lantern row", "--pupils", "5", code=2).output


def test_modifier_in_the_place_of_a_game(tmp_path: Path) -> None:
    path = tmp_path / "more.rules"
    path.write_text('modifier more\n  heading task\n  about "More."\n  add 2 balls\n', encoding="utf-8")
    assert "holds no game" in " ".join(run("check", path, code=2).output.split())
