"""Answers as JSON are what the published schema says, wrong calls among them, and every field is explained."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from running import ROOT, process, run

import compose.terminal.answer as answer

SCHEMA = json.loads(Path(answer.__file__).with_name("answers.schema.json").read_text(encoding="utf-8"))
STRICT = {**SCHEMA, "additionalProperties": False}
GAME = "lantern row"
CALLS = (
    ("games",),
    ("games", "--skill", "tow", "--ages", "5 to 18"),
    ("modifiers",),
    ("kit",),
    ("granted",),
    ("means", "C-stall"),
    ("show", GAME),
    ("understood", GAME),
    ("tidy", str(ROOT / "library" / "games" / "lantern-row.rules"), "--look"),
    ("remix", GAME, "--with", "roll instead"),
    ("check", GAME),
    ("check", "heron and pike", "--with", "nobody is out"),
    ("check", "nothing of that name"),
    ("forecast", GAME),
    ("card", GAME),
    ("plan", GAME),
    ("replay", GAME),
    ("export", GAME),
    ("differ", GAME, "--with", "kick instead", "--quick"),
    ("suggest", GAME, "--skill", "kick", "--tries", "40"),
    ("fit", GAME, "--class", "beck class", "--quick"),
    ("lineage",),
    ("keep", GAME, "--with", "roll instead"),
    ("shelf", "find", "--skill", "kick"),
    ("shelf", "rounds", GAME),
)


def test_the_page_of_the_language_is_shown() -> None:
    page = (ROOT / "grammar" / "LANGUAGE.md").read_text(encoding="utf-8")
    assert run("language", code=0).stdout.rstrip() == page.rstrip()


def test_schema_is_one_and_is_what_the_program_shows() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert json.loads(run("schema", code=0).stdout) == SCHEMA
    assert all(field["description"] for field in SCHEMA["properties"].values())
    assert SCHEMA["properties"]["version"]["const"] == answer.JSON_VERSION


@pytest.mark.parametrize("call", CALLS, ids=" ".join)
def test_answers_are_what_the_schema_says(
    call: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("RULEWEAVE_SHELF", str(tmp_path / "shelf"))
    told: Any = json.loads(run(*call, "--json").stdout)
    jsonschema.validate(told, STRICT)


WRONG_CALLS = (("check",), ("chek",), ("check", GAME, "--pupils", "many"), ("pack", "make"))


@pytest.mark.parametrize("call", WRONG_CALLS, ids=" ".join)
def test_wrong_calls_are_told_as_json(call: tuple[str, ...]) -> None:
    done = process(*call, "--json")
    assert done.returncode == 2 and not done.stderr
    told = json.loads(done.stdout)
    jsonschema.validate(told, STRICT)
    assert told["findings"][0]["code"] == "U-use" and "--help" in told["findings"][0]["hint"]
