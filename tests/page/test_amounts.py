"""What can be set of a modifier begins at the amount that its own sheet calls usual, and goes as far as it says."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import library
from compose.page.answers.remixing import quick
from compose.page.answers.values import Asked

TAKES = re.compile(r"^  takes (\w+): (\S+(?: \S+)?) to (\S+(?: \S+)?), usually (.+)$", re.MULTILINE)
LANTERNS = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")


@pytest.mark.parametrize("path", library.modifier_paths(), ids=lambda path: path.stem)
def test_an_amount_begins_at_what_is_usual(path: Path) -> None:
    sheet = path.read_text(encoding="utf-8")
    said = TAKES.findall(sheet)
    name = sheet.partition("\n")[0].removeprefix("modifier ")
    shown = quick(Asked((LANTERNS,), (name,), "class My class\n  class of 20\n  ages 9 to 10\n", "en"))
    (used,) = shown.used
    assert [(each.name, each.words) for each in used.amounts] == [(name, usual) for name, _, _, usual in said]
    for each, (_, least, most, usual) in zip(used.amounts, said, strict=True):
        assert (each.less is None) == (usual == least) and (each.more is None) == (usual == most)
