"""What the commands answer: exit codes, JSON, and no line wider than a terminal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from running import OF_A_GAME, REPORTING, process, run, run_json

import library
from grammar.parse import parse

WITHOUT_NAME = [command for command in REPORTING if command in ("games", "modifiers", "kit", "granted")]


@pytest.mark.parametrize("command", WITHOUT_NAME)
def test_lists(command: str) -> None:
    result = run(command, code=0)
    assert result.stdout.strip()
    if command != "granted":
        assert all(len(line) <= 80 for line in result.stdout.splitlines())
    assert run_json(command, code=0)


@pytest.mark.parametrize("command", OF_A_GAME)
def test_sound_game_is_answered_in_words_and_in_json(command: str) -> None:
    result = run(command, "lantern row", code=0)
    assert "lantern" in result.stdout.lower()
    assert run_json(command, "lantern row", code=0) if command in REPORTING else True


@pytest.mark.parametrize("command", [command for command in OF_A_GAME if command not in ("show", "remix", "export")])
def test_no_line_is_wider_than_a_terminal(command: str) -> None:
    few = {"check": ("--states", "2000"), "replay": ("--states", "2000"), "suggest": ("--tries", "10")}
    for game in ("heron and pike", "ferry bench") if command not in ("forecast", "suggest") else ("lantern row",):
        lines = run(command, game, *few.get(command, ())).output
        assert not [line for line in lines.splitlines() if len(line) > 80]


def test_check_ends_with_1_where_there_is_something_to_mend() -> None:
    result = run("check", "lantern row", "--states", "100", code=1)
    assert "C-budget" in result.stdout
    answer = run_json("check", "lantern row", "--states", "100", code=1)
    assert not answer["facts"]["complete"]


def test_check_says_the_same_in_words_and_in_json() -> None:
    answer = run_json("check", "lantern row", "--with", "add balls, n 2")
    result = run("check", "lantern row", "--with", "add balls, n 2")
    assert f"{answer['facts']['situations']:,} situations" in result.stdout
    for finding in answer["findings"]:
        assert finding["code"] in result.stdout


def test_remix_can_be_read_again(tmp_path: Path) -> None:
    path = tmp_path / "remix.rules"
    run("remix", "lantern row", "--with", "kick instead", "--with", "add balls, n 2", "--out", path, code=0)
    assert run_json("remix", path)["text"].count("kick") == path.read_text(encoding="utf-8").count("kick")


@pytest.mark.parametrize("arguments", [
    ("remix", "heron and pike", "--with", "nobody is out"),
    ("keep", "heron and pike", "--with", "nobody is out"),
    ("carry", "library/remixes/heron-and-pike-all-play.rules"),
    ("new", "knock down"),
    ("granted",),
])
def test_a_sheet_on_the_terminal_stands_alone(arguments: tuple[str, ...]) -> None:
    """What the program has to say of it stands beside it, so that it can go into a file as it is."""
    result = run(*arguments)
    assert parse(result.stdout).value is not None, result.stdout


def test_whole_number_of_pupils_is_shared_among_the_sides() -> None:
    assert run_json("check", "lantern row", "--pupils", "13")["players"] == {"north": 7, "south": 6}


def test_program_as_a_process() -> None:
    result = process("check", "lantern row", "--json")
    assert result.returncode == 0, result.stderr
    assert json.loads(result.stdout)["game"] == "Lantern Row"
    assert not result.stderr


def test_terminal_that_knows_few_letters() -> None:
    for arguments, code in ((("check", "lantern rwo"), 2), (("check", "lantern row", "--states", "100"), 1)):
        result = process(*arguments, PYTHONIOENCODING="ascii")
        assert result.returncode == code
        assert b"Traceback" not in result.stderr


@pytest.mark.parametrize(("like", "things"), [("foam ball", "nothing to mend"), ("handball", "1 thing to mend")])
def test_the_card_counts_what_the_check_counts(tmp_path: Path, like: str, things: str) -> None:
    """A card never says that nothing is to mend where the check warns of a hard ball aimed at people."""
    sheet = next(path for path in library.game_paths() if path.stem == "heron-and-pike").read_text(encoding="utf-8")
    sheet = sheet.replace("foam ball", "game ball").replace("6 game balls", f"6 game balls, like a {like}")
    path = tmp_path / "ball.rules"
    path.write_text(sheet, encoding="utf-8")
    assert f"Proved: {things}" in run("check", path, code=int(like == "handball")).stdout
    card = run_json("card", path)
    assert [each["code"] for each in card["findings"] if (each["set"], each["severity"]) == ("proved", "warning")] == [
        "N-hard-ball"
    ] * (like == "handball")
    known = next(part["lines"] for part in card["sections"] if part["heading"] == "Checked and forecast")
    assert (card["to_mend"] == 0) == known[0].endswith("nothing to mend.")
