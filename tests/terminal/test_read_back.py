"""The command that reads a sheet back: under headings, line by line as JSON, of remixes, in French."""

from __future__ import annotations

from pathlib import Path

import pytest
from running import run, run_json

import library

NAMES = [path.stem for path in library.game_paths()]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "fr"])
def test_every_game_is_read_back_within_the_terminal(name: str, language: str) -> None:
    said = run("understood", name, "--language", language, code=0).stdout
    assert all(len(line) <= 80 for line in said.splitlines())
    assert said.count("\n  - ") > 10


@pytest.mark.parametrize("name", NAMES)
def test_json_says_of_every_line_of_play_what_was_understood(name: str) -> None:
    told = run_json("understood", name, code=0)
    for line in told["lines"]:
        if line["section"] in ("space", "kit", "set-up", "play", "when", "finish"):
            assert line["understood"], line
            assert line["line"] >= 1 and line["file"]
    quoted = [line for line in told["lines"] if not line["read_by_the_check"]]
    assert all(line["words"] in line["understood"] for line in quoted)


def test_a_remix_is_read_back_with_what_it_changes() -> None:
    said = run("understood", "lantern row", "--with", "roll instead", code=0).stdout
    assert "may roll a foam ball at the lanterns of the other side" in " ".join(said.split())
    assert "overarm" not in said
    assert "usually from about" in said


def test_what_holds_without_being_said_is_marked() -> None:
    told = run_json("understood", "lantern row", code=0)
    granted = [line for line in told["lines"] if line["taken_for_granted"]]
    assert {Path(line["file"]).name for line in granted} == {library.granted_path().name}
    assert "a missed ball rests in the half it was sent to" in [line["words"] for line in granted]
    assert "(taken for granted)" in " ".join(run("understood", "lantern row", code=0).stdout.split())


def test_show_may_say_it_too() -> None:
    alone = run("show", "lantern row", code=0).stdout
    both = run("show", "lantern row", "--understood", code=0).stdout
    assert both.startswith(alone.rstrip()) and run("understood", "lantern row", code=0).stdout in both


LANTERNS = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")


@pytest.mark.parametrize(("was", "now"), [
    ("  players stay in their half\n", "  players stay where they like best\n"),
    ("  a lantern is knocked: it stays down\n", "  a lantern is eaten: it stays down\n"),
    ("  8 foam balls\n", "  8 foam bells\n"),
])  # fmt: skip
def test_of_a_sheet_with_mistakes_the_other_lines_are_read_back(tmp_path: Path, was: str, now: str) -> None:
    """With the mistakes come the lines that are not read yet; what no line says then is marked as taken for granted."""
    text = LANTERNS.replace(was, now)
    number = text.splitlines().index(now.rstrip("\n")) + 1
    sheet = tmp_path / "slipped.rules"
    sheet.write_text(text, encoding="utf-8")
    answer = run("understood", sheet, code=2)
    said = " ".join(answer.stdout.split())
    assert "yet. What was understood of the others" in said and str(number) in said.split("yet")[0]
    assert "Mark a court 18 m by 9 m" in said and "mistake" in answer.stderr


def test_of_a_sheet_without_a_court_the_other_lines_are_said_in_the_languages_words(tmp_path: Path) -> None:
    sheet = tmp_path / "slipped.rules"
    text = LANTERNS.replace("  court ", "  cot ").replace("a lantern is knocked: it", "when a lantern falls it")
    sheet.write_text(text, encoding="utf-8")
    said = run("understood", sheet, code=2).stdout
    assert "understood of the others" not in said and "cot 18 m" not in said
    assert "│ a lantern is knocked: it stays down" in said
