"""The commands for sharing: what they answer, in words and as JSON, and how they end."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hostile_packs import hostile
from shared_games import FELL_GATE, KICK_ON, KICKED_GATE, MORE_CONES, TOLL_BRIDGE, game_item
from shelves import files

from tests.terminal.running import Result, typed

HOSTILE = hostile()


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with two games, a remix and two modifiers, and a shelf in it."""
    monkeypatch.setenv("RULEWEAVE_SHELF", str(tmp_path / "shelf"))
    monkeypatch.chdir(tmp_path)
    remix = KICKED_GATE.replace("CONTENT", game_item().content)
    texts = {"fell-gate": FELL_GATE, "toll-bridge": TOLL_BRIDGE, "fell-gate-kicked": remix}
    for name, text in (texts | {"kick-on": KICK_ON, "more-cones": MORE_CONES}).items():
        (tmp_path / f"{name}.rules").write_text(text, encoding="utf-8")
    return tmp_path


def run(*order: str) -> Result:
    return typed(*order)


def fine(*order: str) -> str:
    done = run(*order)
    assert done.exit_code == 0, (done.output, done.exception)
    return done.output


def told(*order: str, code: int = 0) -> dict[str, Any]:
    done = run(*order, "--json")
    assert done.exit_code == code, (done.output, done.exception)
    value: dict[str, Any] = json.loads(done.stdout)
    return value


def refused(*order: str) -> str:
    """The one line in which a command refuses."""
    done = run(*order)
    assert done.exit_code == 2 and done.stdout == "", done.output
    lines = done.stderr.strip().splitlines()
    assert len(lines) == 1, lines
    return lines[0]


ALL = ("fell-gate.rules", "toll-bridge.rules", "fell-gate-kicked.rules", "kick-on.rules", "more-cones.rules")


def make(*names: str) -> None:
    fine("pack", "make", *names, "--title", "Winter games", "--from", "Fellgate school (invented)", "--out", "w.zip")


def test_a_pack_goes_from_school_to_school(here: Path) -> None:
    make(*ALL)
    assert "Fell Gate Kicked (remix)" in fine("pack", "look", "w.zip")
    assert "w.zip is in order: 5 things, every hash is right." in fine("pack", "verify", "w.zip")
    assert not (here / "shelf").exists()
    assert "5 things taken in." in fine("pack", "take", "w.zip")
    assert "Nothing was changed." in fine("pack", "take", "w.zip")
    assert {thing["name"] for thing in told("shelf", "list")["things"]} == {
        "Fell Gate", "Toll Bridge", "Fell Gate Kicked", "kick on", "more cones",
    }  # fmt: skip
    assert "Undone: taking in Winter games." in fine("shelf", "undo")
    assert told("shelf", "list")["things"] == []


def test_the_same_pack_has_the_same_bytes(here: Path) -> None:
    make(*ALL)
    first = (here / "w.zip").read_bytes()
    (here / "w.zip").unlink()
    make(*reversed(ALL))
    assert (here / "w.zip").read_bytes() == first


def test_modifiers_named_beside_a_game_make_a_remix_of_it(here: Path) -> None:
    fine("pack", "make", "fell-gate.rules", "--with", "more-cones.rules, n 2", "--out", "w.zip")
    things = told("pack", "look", "w.zip")["items"]
    assert [thing["name"] for thing in things] == ["Fell Gate", "Fell Gate Remix", "more cones"]
    assert things[1]["made_of"] == "Fell Gate with more cones (n 2)"
    assert told("pack", "verify", "w.zip")["cannot_be_made"] == {}
    fine("pack", "make", "fell-gate.rules", "more-cones.rules", "--with", "more-cones.rules, n 2", "--out", "x.zip")
    assert told("pack", "verify", "x.zip")["items"] == 3


def test_what_the_shelf_has_otherwise_is_asked_and_nothing_is_taken(here: Path) -> None:
    make("fell-gate.rules", "toll-bridge.rules")
    (here / "fell-gate.rules").write_text(FELL_GATE.replace("14 m", "15 m"))
    fine("shelf", "keep", "fell-gate.rules")
    before = files(here / "shelf")
    done = run("pack", "take", "w.zip")
    assert done.exit_code == 1 and "Say what becomes of Fell Gate" in done.output
    assert 'ruleweave merge "Fell Gate" "w.zip"' in done.output
    assert told("pack", "take", "w.zip", code=1)["taken"] == []
    assert files(here / "shelf") == before
    said = " ".join(fine("pack", "take", "w.zip", "--choose", "fell gate=both").split())
    assert "Theirs is kept as Fell Gate 2." in said
    fine("shelf", "undo")
    taken = told("pack", "take", "w.zip", "--keep", "theirs")["taken"]
    assert [(each["name"], each["kept_as"]) for each in taken] == [
        ("Fell Gate", "Fell Gate"),
        ("Toll Bridge", "Toll Bridge"),
    ]


@pytest.mark.parametrize("trick", ["a locked entry", "a bomb by ratio", "bytes behind the end", "a link"])
def test_a_hostile_pack_is_refused_in_one_line(here: Path, trick: str) -> None:
    (here / "bad.zip").write_bytes(HOSTILE[trick][0])
    for command in ("take", "look", "verify"):
        assert refused("pack", command, "bad.zip").startswith("bad.zip: ")
    assert not (here / "shelf").exists()
    assert told("pack", "take", "bad.zip", code=2)["findings"][0]["code"].startswith("P-")
    assert "nowhere.zip" in refused("pack", "take", "nowhere.zip")


def test_things_are_found_and_the_nearest_where_nothing_fits(here: Path) -> None:
    fine("shelf", "keep", *ALL)
    assert "Toll Bridge  (game" in fine("shelf", "find", "toll")
    assert [each["name"] for each in told("shelf", "find", "--skill", "kick")["fitting"]] == ["Fell Gate Kicked"]
    done = run("shelf", "find", "--kind", "game", "--age", "8", "--space", "13 by 7")
    assert done.exit_code == 1 and "But it needs a court of 14 m by 7 m." in done.output
    assert told("shelf", "find", "tol brigde", code=1)["did_you_mean"] == "tol bridge"
    assert run("shelf", "find", "--space", "huge").exit_code == 2


def test_rounds_are_kept_told_given_out_and_forgotten(here: Path) -> None:
    fine("shelf", "keep", "fell-gate.rules", "kick-on.rules")
    order = ("shelf", "played", "fell gate", "--minutes", "4.5", "--pupils", "18", "--waited", "2", "--class", "5a")
    assert "Names of pupils are not kept" in fine(*order, "--winner", "ewes")
    assert told(*order, "--winner", "draw", "--with", "kick-on.rules")["rounds"] == 2
    assert "`Anna` is not a side of this game." in refused(*order, "--winner", "Anna")
    kept = told("shelf", "rounds", "fell gate")["rounds"]
    assert [each["winner"] for each in kept] == ["ewes", "draw"] and kept[0]["content"] != kept[1]["content"]
    assert kept[0]["content"] == game_item().content
    fine("shelf", "note", "fell gate", "Went well.")
    fine("shelf", "export", "--out", "mine.json")
    mine = json.loads((here / "mine.json").read_text())
    assert len(mine["rounds"]["fell-gate"]) == 2 and mine["things"][0]["notes"][0]["text"] == "Went well."
    assert run("shelf", "forget", "rounds").exit_code == 2
    assert told("shelf", "forget", "rounds", "--class", "5a", "--sure")["deleted"] == 2
    assert told("shelf", "forget", "notes", "--sure")["deleted"] == 1
    assert told("shelf", "forget", "everything", "--sure")["deleted"] == 2
    assert files(here / "shelf") == {}


def test_two_schools_changes_come_together_or_are_asked_about(here: Path) -> None:
    fine("shelf", "keep", "fell-gate.rules")
    (here / "fell-gate.rules").write_text(FELL_GATE.replace("14 m", "15 m"))
    fine("shelf", "keep", "--newer", "fell-gate.rules")
    (here / "theirs.rules").write_text(FELL_GATE.replace("7 to 11", "8 to 11").replace("14 m", "16 m"))
    order = ("merge", "fell gate", "theirs.rules", "--base", "base.rules")
    (here / "base.rules").write_text(FELL_GATE)
    asked = told(*order, code=1)
    assert [each["words"][:32] for each in asked["conflicts"]] == ["Both changed a line under space."]
    done = run(*order)
    assert done.exit_code == 1 and '--choose "1=ours"' in done.output
    assert "merged on your shelf" in fine(*order, "--choose", "1=theirs")
    merged = (here / "shelf/games/fell-gate.rules").read_text()
    assert "ages 8 to 11" in merged and "court 16 m by 7 m" in merged
    assert run(*order, "--choose", "7=ours").exit_code == 2
    assert run(*order, "--choose", "one=ours").exit_code == 2
    fine(*order, "--rest", "ours", "--out", "merged.rules")
    assert (here / "merged.rules").read_text().startswith("note: An invented game")


def test_a_merge_reads_a_pack_a_common_shelf_and_what_was_before(here: Path) -> None:
    fine("shelf", "keep", "fell-gate.rules")
    make("fell-gate.rules", "toll-bridge.rules")
    (here / "fell-gate.rules").write_text(FELL_GATE.replace("14 m", "15 m"))
    fine("shelf", "keep", "--newer", "fell-gate.rules")
    (here / "common").mkdir()
    (here / "old.rules").write_text(FELL_GATE.replace("7 to 11", "8 to 11"))
    fine("common", "give", "common", "old.rules")
    (here / "base.rules").write_text(FELL_GATE)
    for theirs, court, ages in (("w.zip", 15, 7), ("past", 15, 7), ("common", 15, 8)):
        fine("merge", "fell gate", theirs, "--base", "base.rules", "--out", "merged.rules", "--force")
        merged = (here / "merged.rules").read_text()
        assert f"court {court} m by 7 m" in merged and f"ages {ages} to 11" in merged, theirs
    assert "has no past 9" in run("merge", "fell gate", "past 9").stderr
    assert "brings nothing called" in run("merge", "kick-on.rules", "w.zip").stderr


def test_a_remix_that_cannot_be_made_is_not_packed(here: Path) -> None:
    (here / "bad.rules").write_text('remix Bad\n  based on "Fell Gate"\n  with "first to points"\n')
    done = run("pack", "make", "bad.rules", "--out", "bad.zip")
    assert done.exit_code == 2 and "cannot be made" in done.stderr and not (here / "bad.zip").exists()


def test_a_merge_that_makes_no_game_is_not_kept(here: Path) -> None:
    (here / "ours.rules").write_text(FELL_GATE.replace("cone", "pin"))
    added = "it stays down\n  a player is hit: play goes on"
    (here / "theirs.rules").write_text(
        FELL_GATE.replace("it stays down", added).replace("2 foam balls", "4 foam balls")
    )
    done = run("merge", "ours.rules", "theirs.rules", "--base", "fell-gate.rules", "--out", "merged.rules")
    assert done.exit_code == 2 and "Together they are no game" in done.output
    assert not (here / "merged.rules").exists()


def test_a_common_shelf_is_given_to_taken_from_and_made_a_page(here: Path) -> None:
    (here / "common").mkdir()
    assert "Fell Gate is new there." in fine("common", "give", "common", *ALL)
    assert len(told("common", "list", "common")["things"]) == 5
    assert "1 thing taken in." in fine("common", "take", "common", "toll bridge")
    assert told("common", "page", "common", "--out", "site")["made"] == 5
    assert "0 made, 5 left as they were" in fine("common", "page", "common", "--out", "site")
    assert (here / "site/index.html").is_file()
    assert "There is no folder" in refused("common", "list", "nowhere")
    assert "not in a git repository" in refused("common", "give", "common", "fell-gate.rules", "--commit")


def test_commands_are_there_without_loading_what_they_need() -> None:
    """Other commands must not start later for these."""
    look = (
        "import sys, typer; from compose.terminal.share_commands import register; register(typer.Typer());"
        "print([name for name in sys.modules if name.startswith(('compose.share', 'grammar', 'library', 'sqlite3'))])"
    )
    done = subprocess.run([sys.executable, "-c", look], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
