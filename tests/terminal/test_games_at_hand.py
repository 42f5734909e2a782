"""Games chosen by wishes; files of the folder and things of the shelf go by their names in every command."""

from __future__ import annotations

from pathlib import Path

import pytest
from running import run, run_json

import library

ROW = library.game_paths()[0].parent / "lantern-row.rules"


@pytest.fixture(autouse=True)
def own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a game and a modifier of one's own, and a shelf elsewhere."""
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    monkeypatch.setenv("RULEWEAVE_SHELF", str(tmp_path / "shelf"))
    (here / "mine.rules").write_text(ROW.read_text(encoding="utf-8").replace("game Lantern Row", "game My Row"))
    text = library.modifier_paths()[0].parent.joinpath("hold-limit.rules").read_text(encoding="utf-8")
    (here / "quick.rules").write_text(text.replace("modifier hold limit", "modifier quick hands"))
    return here


def test_own_game_and_modifier_go_by_their_names() -> None:
    for name in ("my row", "mine", "My Row"):
        assert "My Row" in run("check", name, "--with", "quick hands", code=0).output
    assert "game My Row" in run("show", "my row", code=0).output


def test_own_game_is_listed_once_with_its_file() -> None:
    assert run("games", code=0).output.count("My Row") == 1
    (listed,) = [each for each in run_json("games", code=0)["games"] if each["name"] == "My Row"]
    assert (listed["file"], listed["where"]) == ("mine.rules", "here")
    assert "quick.rules" in run("modifiers", code=0).output


def test_shelf_comes_after_the_folder_and_before_the_library(own_folder: Path) -> None:
    text = ROW.read_text(encoding="utf-8")
    changed = text.replace("8 foam balls", "6 foam balls").replace("4 foam balls", "3 foam balls")
    other = own_folder.parent / "lantern-row.rules"
    other.write_text(changed)
    run("shelf", "keep", other, code=0)
    assert "6 foam balls" in run("show", "lantern row", code=0).output
    fewest = changed.replace("6 foam balls", "4 foam balls").replace("3 foam balls", "2 foam balls")
    (own_folder / "lantern-row.rules").write_text(fewest)
    assert "4 foam balls" in run("show", "lantern row", code=0).output


def test_remix_finds_its_base_in_the_folder(own_folder: Path) -> None:
    (own_folder / "low.rules").write_text('remix Low Row\n  based on "My Row"\n  with "roll instead"\n')
    assert "Low Row" in run("check", "low row", "--pupils", "20").output


BROKEN = {
    "a": "game Broken\n  ages 8 to\n",
    "b": "game Broken\n  ages 8 to 12\n",
    "c": 'remix Broken\n  based on "Lantern Row"\n  with "no such thing"\n',
    "d": 'remix Broken\n  based on "No Row"\n',
}


def test_own_sheets_with_mistakes_are_left_out_and_said(own_folder: Path) -> None:
    for name, text in BROKEN.items():
        (own_folder / f"{name}-broken.rules").write_text(text)
    result = run("games", code=0)
    assert all(f"{name}-broken.rules is left out" in " ".join(result.stderr.split()) for name in BROKEN)
    assert "My Row" in result.stdout


@pytest.mark.parametrize(
    ("wishes", "there", "gone"),
    [
        (("--skill", "roll"), "Millrace Roll", "Lantern Row"),
        (("--skill", "throw"), "Otter Pebbles", "Millrace Roll"),
        (("--ages", "9"), "Lantern Row", ""),
        (("--ages", "9 to 11"), "Lantern Row", "Cairn Keepers"),
        (("--pupils", "30"), "Homestead", "Lantern Row"),
        (("--kit", "20 foam balls", "--kit", "cones", "--kit", "12 plastic pins"), "Lantern Row", "Heron and Pike"),
    ],
    ids=lambda wishes: wishes[0] if isinstance(wishes, tuple) else "",
)
def test_games_as_wished(wishes: tuple[str, ...], there: str, gone: str) -> None:
    names = {each["name"] for each in run_json("games", *wishes, code=0)["games"]}
    assert there in names and gone not in names


def test_nearest_game_says_what_it_lacks() -> None:
    found = run_json("games", "--skill", "tow", "--ages", "5 to 18", code=1)
    assert not found["games"] and all(each["lacks"] for each in found["nearest"])


def test_sorted_by_age() -> None:
    found = [each["ages_years"][0] for each in run_json("games", "--sort", "age", code=0)["games"]]
    assert found == sorted(found)
    assert run("games", "--sort", "colour").exit_code == 2
