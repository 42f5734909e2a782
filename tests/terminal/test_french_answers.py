"""Commands that answer in French: nothing of it is English but lines of the sheet and what is to be typed."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import library
from tests.telling.test_french_findings import ENGLISH_WORDS
from tests.terminal.running import run

CLASS = """class Fell Class
  class of 27
  ages 9 to 9
  the hall is 15 m by 12 m
  5 foam balls
  6 cones
"""
AS_WRITTEN = re.compile(r"«[^»]*»|\"[^\"]*\"|\[[^\]]*\]|│[^│]*│ *\^+|--with '[^']*'|--[a-z]+")
MORE_ENGLISH = {"and", "at", "by", "in", "it", "most", "no", "round", "than", "too", "who"} | ENGLISH_WORDS
CALLS = (
    ("forecast", "heron and pike", "--pupils", "16", "--absent", "3"),
    ("forecast", "kiln row", "--pupils", "24"),
    ("replay", "heron and pike", "--with", "nobody is out", "--finding", "C-idle"),
    ("suggest", "lantern row", "--class", "CLASS", "--tries", "8"),
    ("suggest", "ferry bench", "--wait", "0.1", "--turns", "9", "--round", "1 to 2", "--tries", "2"),
    ("suggest", "lantern row", "--skill", "kick", "--ages", "9 to 10", "--court", "15 by 8", "--tries", "8"),
    ("games", "--kit", "3 cones", "--minutes", "2", "--skill", "kick", "--ages", "5 to 20"),
)


@pytest.mark.parametrize("call", CALLS, ids=lambda call: " ".join(call[:2]))
def test_an_answer_in_french_is_french(call: tuple[str, ...], tmp_path: Path) -> None:
    group = tmp_path / "fell-class.rules"
    group.write_text(CLASS, encoding="utf-8")
    said = run(*(str(group) if each == "CLASS" else each for each in call), "--language", "fr").stdout
    told = AS_WRITTEN.sub("", " ".join(said.replace(str(group), "").split()))
    for path in library.game_paths():  # a title stays as its author wrote it
        told = re.sub(path.stem.replace("-", "[- ]"), "", told, flags=re.IGNORECASE)
    assert not MORE_ENGLISH & set(re.findall(r"[a-zà-ÿ]+", told.lower().replace("’", "’ "))), said


def test_a_line_of_play_says_from_where_to_where_in_french() -> None:
    said = run("check", "kiln row", "--language", "fr").stdout
    assert re.search(r"\d à \d\. \d fois", said)
