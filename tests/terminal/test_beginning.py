"""Sheets to begin from: each is tidy, sound and takes a name of one's own."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from running import run, run_json

import library

KINDS = {path.stem: path for path in library.beginning_paths()}
GAMES = sorted(stem for stem, path in KINDS.items() if "\ngame " in path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_beginning_is_tidy_and_takes_a_name(kind: str, tmp_path: Path) -> None:
    assert run("tidy", KINDS[kind], "--look").exit_code == 0
    out = tmp_path / "own.rules"
    said = run("new", kind.replace("-", " "), "--title", "Fell Row", "--out", out, code=0).stdout
    assert "Fell Row" in out.read_text(encoding="utf-8")
    words = shlex.split(" ".join(said.partition("then: ruleweave ")[2].split()))
    if words[0] != "games":  # which looks at all that there are
        assert run(*words).exit_code in (0, 1), "what it says to do next can be done"


@pytest.mark.parametrize("kind", GAMES)
def test_game_to_begin_from_has_nothing_to_mend(kind: str) -> None:
    assert run_json("check", KINDS[kind], code=0)["to_mend"] == 0


def test_kinds_are_listed_and_the_nearest_is_offered() -> None:
    listed = {each["name"] for each in run_json("new", code=0)["things"]}
    assert listed == {stem.replace("-", " ") for stem in KINDS}
    assert "knock down" in run("new", "knock dwn", code=2).stderr


def test_version_is_said() -> None:
    assert run("--version", code=0).stdout.startswith("Ruleweave ")
