"""Every command gives the same answer: for one set the same findings and exit code, and the same odds and length."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import library
from compose.staging.teams import teams_of
from grammar.game import Game
from tests.interpreter.sheets import library_game

sys.path.insert(0, str(Path(__file__).parents[1] / "terminal"))
from running import run

REMIXES = (
    ("lantern-row", "roll instead"),
    ("heron-and-pike", "nobody is out"),
    ("sledge-road", "first to points"),
    ("millrace-roll", "add balls, n 4"),
    ("quarry-row", "shorter court"),
)
CASES = (*((path.stem, None) for path in library.game_paths()), *REMIXES)
CLASS = """\
class One Class
  class of {pupils}
  ages {youngest:g} to {oldest:g}
"""
MANY = """\
game Lost Cones
  ages 8 to 12
  skills roll

space
  court 18 m by 9 m, halved across

sides
  owls and hares, 4 players each

kit
  2 foam balls
  3 cones for each side
  2 lanterns, like a club

set-up
  cones on the back line of their side, evenly spaced
  lanterns in the middle
  1 foam ball in each half

play
  players stay in their half
  players roll a foam ball at the cones of the other side, 1 in 9 succeed
  a missed ball rests behind the back line of the other side
  nobody fetches balls from behind the back line

when
  a lantern is knocked: the roller's side scores 1 point
  a ball is caught: the roller is out

finish
  owls wins when hares has no cones standing
"""


def pupils(game: Game) -> int:
    """As many as the middle of what each side may be, so that nobody is over."""
    wanted = sum((side.least + side.most + 1) // 2 for side in game.sides)
    return next(number for number in range(wanted, 0, -1) if teams_of(game, number).over == 0)


def answers(name: str, modifier: str | None, folder: Path) -> Iterator[tuple[str, int, dict[str, Any]]]:
    """The answer of every command that speaks of one game, with its exit code."""
    game = library_game(name)
    number = pupils(game)
    youngest, oldest = game.ages_years
    group = folder / "one.class"
    group.write_text(CLASS.format(pupils=number, youngest=youngest, oldest=oldest), encoding="utf-8")
    changed = ("--with", modifier) if modifier else ()
    written = folder / f"{name}.rules"
    run("remix", name, *changed, "--out", written, code=0)
    for_them = ("--pupils", str(number))
    asked = {
        "check": (name, *changed, *for_them),
        "forecast": (name, *changed, *for_them),
        "card": (name, *changed, *for_them),
        "fit": (name, *changed, "--class", str(group)),
        "differ": (name, name, *changed, *for_them),
        "lesson": (written, *for_them, "--minutes", "200"),
        "suggest": (name, *changed, *for_them, "--seconds", "0.5"),
    }
    for command, words in asked.items():
        result = run(command, *words, "--json")
        assert result.exit_code < 2, (command, result.output)
        told = json.loads(result.stdout)
        own = {"differ": lambda told: told["answers"][1], "lesson": lambda told: told["games"][0]}.get(command)
        yield command, result.exit_code, own(told) if own else told


def found(told: dict[str, Any], *names: str) -> list[tuple[str, str]]:
    """Code and severity of the findings of some sets."""
    return [(each["code"], each["severity"]) for each in told["findings"] if each["set"] in names]


@pytest.mark.sample(1)
@pytest.mark.parametrize(("name", "modifier"), CASES)
def test_one_answer_of_a_game(name: str, modifier: str | None, tmp_path: Path) -> None:
    seen = {command: (code, told) for command, code, told in answers(name, modifier, tmp_path)}
    proved, whole = seen["check"][1], seen["forecast"][1]
    assert proved["shows"] == ["class", "care", "proved"]
    assert whole["shows"] == ["class", "care", "proved", "forecast"]
    for command, (code, told) in seen.items():
        said = [each for each in found(told, "proved") if not each[0].startswith("M-") or command != "lesson"]
        usual = [each for each in found(proved, "proved") if not each[0].startswith("M-") or command != "lesson"]
        assert said == usual, command
        assert told["looked_at"] == proved["looked_at"], command
        if found(told, "class") == found(whole, "class"):
            assert found(told, "care") == found(whole, "care"), command
        assert told["match"] == proved["match"], command
        if told["shows"] != whole["shows"]:
            assert command in ("check", "suggest") and told["odds"] is None
            continue
        of_its_minutes = {"F-inactive"} if command == "lesson" else set()  # this lesson is longer than theirs
        said, usual = ([each for each in found(one, "forecast") if each[0] not in of_its_minutes]
                       for one in (told, whole))  # fmt: skip
        assert said == usual, command
        assert told["odds"] == pytest.approx(whole["odds"], abs=1e-12), command
        assert told["round_minutes"] == pytest.approx(whole["round_minutes"], abs=1e-12), command
        assert told["mean_waits_minutes"] == pytest.approx(whole["mean_waits_minutes"], abs=1e-12), command
        severities = {each["severity"] for each in told["findings"]}
        assert code == (2 if "error" in severities else 1 if "warning" in severities else 0), command
        if found(told, "class") == found(whole, "class"):
            assert code == seen["forecast"][0], command
    severities = {each["severity"] for each in proved["findings"]}
    assert seen["check"][0] == (1 if "warning" in severities else 0)


def points_race(folder: Path, rounds: str) -> Path:
    """A game in which only the carriers score, and more points win a round."""
    text = next(path for path in library.game_paths() if path.stem == "sledge-road").read_text(encoding="utf-8")
    told = text.replace("two halves, the sides change tasks", rounds)
    told = told.replace(": nobody wins", ": more points wins, else a draw")
    assert rounds in told and "more points wins" in told
    sheet = folder / "race.rules"
    sheet.write_text(told, encoding="utf-8")
    return sheet


def test_both_halves_are_one_game(tmp_path: Path) -> None:
    """A side that cannot win a half may win the game: nothing to mend, and the odds say how often."""
    sheet = points_race(tmp_path, "two halves, the sides change tasks")
    check = json.loads(run("check", sheet, "--json", code=0).stdout)
    card = json.loads(run("card", sheet, "--json", code=0).stdout)
    assert check["facts"]["can_win"] == list(check["players"])
    assert "C-half" in {each["code"] for each in check["findings"]}
    wins = list(card["odds"].values())
    assert wins[0] == pytest.approx(wins[1], abs=1e-9) and min(wins) > 0.3
    known = " ".join(next(part["lines"] for part in card["sections"] if part["heading"] == "Checked and forecast"))
    assert "of the games of two halves" in known


@pytest.mark.parametrize("rounds", ["best of 3 rounds", "two halves, the sides change ends"])
def test_a_side_that_keeps_a_task_in_which_it_cannot_win_cannot_win_the_game(tmp_path: Path, rounds: str) -> None:
    sheet = points_race(tmp_path, rounds)
    told = json.loads(run("forecast", sheet, "--json", code=1).stdout)
    check = json.loads(run("check", sheet, "--json", code=1).stdout)
    assert check["facts"]["can_win"] == ["carriers"]
    assert "C-unwinnable" in {each["code"] for each in told["findings"]}
    assert told["odds"]["throwers"] == 0 < told["odds"]["carriers"]


def test_groups_of_other_sizes_play_the_other_half_in_them(tmp_path: Path) -> None:
    """More carriers carry more: whoever has more of them in its half is ahead more often."""
    sheet = points_race(tmp_path, "two halves, the sides change tasks")
    few, many = (json.loads(run("forecast", sheet, "--pupils", each, "--json").stdout) for each in ("20", "21"))
    assert many["players"] == {"carriers": 11, "throwers": 10} and "C-unwinnable" not in str(many["findings"])
    assert few["odds"]["carriers"] == pytest.approx(few["odds"]["throwers"], abs=1e-9)
    assert many["odds"]["carriers"] > many["odds"]["throwers"] + 0.05
    band = many["forecast"]["band"]["usual"]["wins"]
    assert {side: chance["value"] for side, chance in band.items()} == many["odds"]


def test_a_card_says_how_much_it_has_no_room_for(tmp_path: Path) -> None:
    """Each finding that is to mend is on the card, or counted there."""
    sheet = tmp_path / "many.rules"
    sheet.write_text(MANY, encoding="utf-8")
    card = json.loads(run("card", sheet, "--json", code=1).stdout)
    known = next(part["lines"] for part in card["sections"] if part["heading"] == "Checked and forecast")
    assert card["to_mend"] > 3 and known[0].endswith(f"{card['to_mend']} things to mend.")
    titles = {each["title"].rstrip(".") for each in card["findings"] if each["severity"] == "warning"}
    assert all(line.rstrip(".") in titles for line in known[1:4])
    assert known[4].startswith(f"{card['to_mend'] - 3} thing") and "more to mend" in known[4]
