"""The commands of composing, run as they are typed."""

from __future__ import annotations

import json
import shlex
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

import library
from tests.terminal.running import typed


def run(*arguments: str) -> tuple[int, str]:
    """The exit code and all that is printed; the test fails where the program breaks."""
    result = typed(*arguments, COLUMNS="100")
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.output


def answer(*arguments: str) -> tuple[int, dict[str, Any]]:
    """The exit code and the answer as JSON."""
    code, text = run(*arguments, "--json")
    found = json.loads(text)
    assert isinstance(found, dict)
    return code, found


def test_differ_tells_a_remix_from_its_base() -> None:
    code, text = run("differ", "lantern-row", "--with", "roll instead")
    assert code == 1 and "F-short-round" in text, "the exit code is that of the remix, whose rounds are short"
    assert "players roll where they threw overarm" in text
    assert "mean length" in text


def test_differ_sets_two_games_against_each_other() -> None:
    code, found = answer("differ", "lantern-row", "heron-and-pike")
    assert code == 1 and found["other"] == "Heron and Pike"
    assert {each["heading"] for each in found["differences"]} >= {"kit", "space", "finish"}
    assert all(each["name"] for each in found["forecast"])


def test_differ_of_a_game_with_itself_says_so() -> None:
    assert "say the same" in run("differ", "lantern-row", "lantern-row", "--quick")[1]
    assert run("differ", "lantern-row")[0] == 2


def test_suggest_meets_wishes() -> None:
    code, found = answer("suggest", "lantern-row", "--skill", "kick", "--at-most", "4 balls")
    assert code == 0
    names = {each["name"] for each in found["suggestions"][0]["modifiers"]}
    assert names == {"kick instead", "fewer balls"}
    assert all(each["bought"] or each["needed_by"] for each in found["suggestions"][0]["modifiers"])


def test_what_suggest_says_of_the_first_set_can_be_typed() -> None:
    code, text = run("suggest", "lantern-row", "--skill", "kick", "--with", "bigger targets", "--tries", "60")
    assert code == 0
    _, typed = text.split("To play it:" if "To play it:" in text else "To play the first:")
    program, command, *arguments = shlex.split(typed.replace("\\\n", ""))
    assert (program, command) == ("ruleweave", "card")
    game, *options = arguments
    assert game == "lantern-row" and options[:2] == ["--with", "bigger targets"] and len(options) > 2
    assert "needs no modifier" in run("suggest", game, "--skill", "kick", *options)[1]


def test_suggest_mends_a_wrong_game() -> None:
    path = Path(__file__).parents[1] / "wrong_games" / "games" / "stall.wrong.rules"
    code, text = run("suggest", str(path))
    assert code == 0 and "hold limit" in text


@pytest.mark.parametrize(
    "wish",
    [
        ("--skill", "fly"),
        ("--ages", "nine"),
        ("--ages", "11 to 9"),
        ("--court", "15"),
        ("--at-most", "few"),
        ("--at-most", "3 zeppelins"),
        ("--round", "4"),
        ("--class", "nobody"),
    ],
    ids=" ".join,
)
def test_suggest_refuses_what_it_does_not_understand(wish: tuple[str, str]) -> None:
    code, found = answer("suggest", "lantern-row", *wish)
    assert code == 2 and found["findings"][0]["hint"]


def test_suggest_looks_no_further_than_asked_and_says_so() -> None:
    code, found = answer("suggest", "heron-and-pike", "--skill", "tow", "--round", "4 to 6", "--tries", "9")
    assert code == 1 and not found["suggestions"] and not found["all_tried"]
    assert found["nearest"]["missed"]


def test_fit_of_a_class() -> None:
    code, found = answer("fit", "lantern-row", "--class", "beck class")
    assert code == 0
    assert found["staging"]["teams"] == [{"north": 14, "south": 13}]
    assert found["lesson"]["known_by"] == "forecast" and found["lesson"]["rounds"] >= 1
    code, text = run("fit", "four-becks", "--class", "tarn class", "--quick")
    assert code == 1 and "The Tarn Head school hall is 6.7 m too small" in " ".join(text.split())


def test_mix_makes_the_table() -> None:
    code, found = answer("mix", "lantern-row", "toll-stone", "--only", "add balls", "--only", "uneven sides")
    assert code == 0 and len(found["cells"]) == 4
    text = run("mix", "lantern-row", "--only", "add balls", "--only", "first to points", "--why")[1]
    assert "first to points: `first to points` does not fit: Lantern Row has no points." in " ".join(text.split())
    assert "least players" in text
    french = run("mix", "lantern-row", "--only", "add balls", "--why", "--language", "fr")[1]
    assert "plus de ballons" in french and "va\u00a0: 1 paire" in french and "players" not in french
    assert run("mix", "lantern-row", "--only", "ad balls")[0] == 2


def test_mix_is_written_and_fits_a_terminal(tmp_path: Path) -> None:
    out = tmp_path / "table.txt"
    games = [path.stem for path in library.game_paths()] * 2
    assert run("mix", *games, "--only", "catch brings back the last", "--out", str(out))[0] == 0
    lines = out.read_text(encoding="utf-8").splitlines()
    assert max(map(len, lines)) <= 80 and sum(line.startswith("catch brings") for line in lines) > 1


def test_keep_and_carry_a_remix(tmp_path: Path) -> None:
    base = tmp_path / "my-row.rules"
    text = library.game_paths()[0].parent.joinpath("lantern-row.rules").read_text(encoding="utf-8")
    base.write_text(text.replace("game Lantern Row", "game My Row"), encoding="utf-8")
    kept = tmp_path / "low-row.rules"
    added = ("--with", "roll instead", "--with", "add balls, n 3", "--title", "Low Row", "--out", str(kept))
    assert run("keep", str(base), *added)[0] == 0
    assert 'based on "My Row", whose content is "' in kept.read_text(encoding="utf-8")
    assert "players roll where they threw overarm" in run("differ", str(base), str(kept), "--quick")[1]
    assert "Nothing is lost" in run("carry", str(kept))[1]

    old = tmp_path / "before.rules"
    old.write_text(base.read_text(encoding="utf-8"), encoding="utf-8")
    base.write_text(base.read_text(encoding="utf-8").replace("8 foam balls", "10 foam balls")
                    .replace("4 foam balls", "5 foam balls"), encoding="utf-8")  # fmt: skip
    code, found = answer("carry", str(kept), "--old", str(old), "--out", str(kept), "--force")
    assert code == 1
    assert any("now says: 10 foam balls" in each["title"] for each in found["findings"])
    assert "Nothing is lost" in run("carry", str(kept))[1]


def test_keep_of_a_switch_is_an_edit_of_its_own(tmp_path: Path) -> None:
    kept = tmp_path / "hits.rules"
    assert run("keep", "quarry-row", "--with", "turn on hits count", "--out", str(kept), "--title", "Hits")[0] == 0
    assert 'turn on "hits count"' in kept.read_text(encoding="utf-8")
    assert "Nothing is lost" in run("carry", str(kept))[1]


def test_lineage_as_text_drawing_and_data(tmp_path: Path) -> None:
    assert "Lantern Row on the Floor" in run("lineage")[1]
    out = tmp_path / "tree.svg"
    assert run("lineage", "--out", str(out))[0] == 0
    root = ElementTree.fromstring(out.read_text(encoding="utf-8"))
    words = [each.text for each in root.iter("{http://www.w3.org/2000/svg}text")]
    assert "Lantern Row" in words and "roll instead" in words
    found = answer("lineage")[1]
    assert {"base": "Lantern Row", "remix": "Lantern Row on the Floor"}.items() <= found["steps"][0].items() or any(
        step["remix"] == "Lantern Row on the Floor" for step in found["steps"]
    )
    assert run("lineage", "--out", str(tmp_path / "tree.png"))[0] == 2


def test_remixes_that_come_from_each_other_are_refused(tmp_path: Path) -> None:
    for one, other in (("One", "Two"), ("Two", "One")):
        text = f'remix {one}\n  based on "{other}"\n  with "hold limit"\n'
        (tmp_path / f"{one.lower()}.rules").write_text(text, encoding="utf-8")
    code, found = answer("differ", "lantern-row", str(tmp_path / "one.rules"), "--quick")
    assert code == 2 and "comes from itself" in found["findings"][0]["title"]
    assert run("lineage", str(tmp_path), "--out", str(tmp_path / "round.svg"))[0] == 0


@pytest.mark.parametrize("command", ["show", "remix", "check", "forecast", "card", "plan", "suggest"])
def test_every_command_of_a_game_takes_a_remix(command: str) -> None:
    result = typed(command, "lantern row on the floor")
    assert result.exit_code == 0, result.output
    assert "Lantern Row on the Floor" in result.output or "LANTERN ROW ON THE FLOOR" in result.output


def test_remix_of_a_remix_is_made_from_both(tmp_path: Path) -> None:
    kept = tmp_path / "short-floor.rules"
    short = ("--with", "shorter court", "--out", str(kept), "--title", "Short")
    assert run("keep", "lantern row on the floor", *short)[0] == 0
    text = run("differ", "lantern-row", str(kept), "--quick")[1]
    assert "players roll where they threw overarm" in text and "25 % less floor" in text


@pytest.mark.parametrize(
    ("game", "with_rules"), [("lantern-row", ""), ("heron-and-pike", "nobody is out"), ("four-becks", "")]
)
@pytest.mark.parametrize("name", ["beck class", "tarn class"])
def test_fit_says_in_its_last_line_what_its_exit_code_says(game: str, with_rules: str, name: str) -> None:
    modifiers = ("--with", with_rules) if with_rules else ()
    code, text = run("fit", game, *modifiers, "--class", name, "--quick")
    lines = text.splitlines()
    counts = [line for line in lines if line.endswith(" to mend.") or " to mend. " in line]
    assert (lines[-1] == "The game fits the class.") == (code == 0), text
    assert all("nothing to mend" in line for line in counts) == (code == 0), text


def test_fit_is_asked_of_pupils_alone_or_of_a_class() -> None:
    code, alone = run("fit", "lantern row", "--pupils", "27", "--hall", "15 m by 12 m", "--quick")
    assert code == 1 and "Lantern Row for 27 pupils" in alone
    assert "The hall is 5.0 m too small" in " ".join(alone.split())
    assert "9 pupils" in run("fit", "lantern row", "--class", "beck class", "--pupils", "9", "--quick")[1]
    assert run("fit", "lantern row")[0] == 2


def test_fit_speaks_french() -> None:
    _, said = run("fit", "lantern row", "--class", "beck class", "--with", "kick instead", "--language", "fr")
    assert "joueurs du Nord" in said and "à corriger" in said
    assert not {"the", "pupils", "nothing", "usual"} & set(said.lower().split())
