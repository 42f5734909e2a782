"""What no command may do, whatever it is given: end with a traceback, write half a file, talk past the terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import typer.main
from running import run

from compose.terminal.main import app

SAMPLES = {"minutes": "5", "winner": "north", "pupils": "20", "class_name": "no-such.rules", "text": "a word"}


def leaves(command: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    """Every command with its words, those of groups too."""
    for name, inner in getattr(command, "commands", {}).items():
        yield from leaves(inner, (*path, name))
    if not hasattr(command, "commands"):
        yield path, command


# These speak of a file in one line, however long; nothing joins this list.
NOT_YET_FRAMED = ("pack", "shelf", "common")
# These look through what they are given, or answer any words: finding nothing, or a name that is only a word, is no
# mistake.
LOOKS = (("lineage",), ("say",), ("shelf", "find"), ("shelf", "rounds"), ("common", "list"), ("common", "page"))
EVERY = dict(leaves(typer.main.get_command(app)))
of_every_command = pytest.mark.parametrize("words", EVERY, ids=" ".join)
GIVEN_SOMETHING = [
    words for words, command in EVERY.items() if any(each.param_type_name == "argument" for each in command.params)
]


@pytest.fixture(autouse=True)
def nobodys_shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test touches the shelf of whoever runs it; files are named from the test's own folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("RULEWEAVE_SHELF", str(tmp_path / "nobody" / "shelf"))
    for name in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(tmp_path / "nobody"))


def call(words: tuple[str, ...], value: str, out: Path, *more: str) -> Any:
    """The command with one value for all that it must be given."""
    arguments: list[str] = list(words)
    for each in EVERY[words].params:
        if each.param_type_name == "argument":
            arguments.append(SAMPLES.get(each.name, value))
        elif each.required:
            arguments += [each.opts[0], str(out) if each.name == "out" else SAMPLES[each.name]]
    return run(*arguments, *more)


@of_every_command
def test_help_fits_the_terminal(words: tuple[str, ...]) -> None:
    result = run(*words, "--help", code=0)
    assert all(len(line) <= 80 for line in result.output.splitlines())


@of_every_command
def test_unknown_option_is_refused(words: tuple[str, ...]) -> None:
    run(*words, "--no-such-option", code=2)


@pytest.mark.parametrize("words", GIVEN_SOMETHING, ids=" ".join)
@pytest.mark.parametrize("kind", ["missing", "folder", "broken"])
def test_bad_file_is_refused_and_nothing_written(words: tuple[str, ...], kind: str) -> None:
    there = Path("there")
    there.mkdir()
    path = there / f"{kind}.rules"
    broken = b"game A\nplay\n  blah blah\n"
    if kind == "folder":
        path.mkdir()
    elif kind == "broken":
        path.write_bytes(broken)
    before = sorted(there.iterdir())
    result = call(words, str(path), there / "out.pdf")
    assert result.exit_code == 2 or words in LOOKS, result.output
    assert words[0] in NOT_YET_FRAMED or all(len(line) <= 80 for line in result.output.splitlines())
    assert sorted(there.iterdir()) == before or result.exit_code == 0
    assert kind != "broken" or path.read_bytes() == broken


@pytest.mark.parametrize("words", GIVEN_SOMETHING, ids=" ".join)
def test_refusal_is_told_in_json_too(words: tuple[str, ...]) -> None:
    if "as_json" not in {each.name for each in EVERY[words].params}:
        return
    result = call(words, "missing.rules", Path("out.pdf"), "--json")
    assert isinstance(json.loads(result.stdout), dict)
