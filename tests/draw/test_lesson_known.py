"""A lesson that counts what is to mend in a game says what it is, on its sheet as on the terminal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.terminal.running import run

CLASS = """class Few
  class of 27
  ages 9 to 10
  the hall is 15 m by 12 m
  lesson of 40 min
  5 foam balls
  6 cones
"""


@pytest.mark.parametrize("language", ["en", "fr"])
def test_what_is_counted_is_named(tmp_path: Path, language: str) -> None:
    sheet = tmp_path / "few.rules"
    sheet.write_text(CLASS, encoding="utf-8")
    words = "lesson", "lantern row", "otter reeds", "--class", str(sheet), "--quick"
    told = " ".join(run(*words, "--language", language, code=None).output.split())
    found = json.loads(run(*words, "--json", code=None).output)
    counts = {"en": "to mend", "fr": "à corriger"}[language]
    for game in found["games"]:
        line = f"{game['title']}: " if language == "en" else f"{game['title']} : "
        said = next(part for part in told.split("- ") if part.startswith(line) and counts in part)
        mend = [each["title"] for each in game["findings"] if each["severity"] != "note"]
        assert mend
        assert language == "fr" or all(title in said for title in mend[:3]), said
        assert said.count(". ") >= min(len(mend), 3), said
