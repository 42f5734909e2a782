"""The sheets that say told games are read to the end, and the table names each."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from grammar.core.reading.from_game import core_of
from grammar.format import format_file
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories

FOLDER = Path(__file__).parent
SHEETS = tuple(sorted(FOLDER.glob("*.rules")))
TABLE = (FOLDER / "table.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_told_game_is_read_and_tidied_without_a_change_of_meaning(path: Path) -> None:
    read = parse(path.read_text(encoding="utf-8"), path.name)
    assert read.value is not None, [(each.place.line, each.title) for each in read.findings]
    game = resolve(read.value.games[0], kit_categories())
    assert game.value is not None, [(each.place.line, each.title) for each in game.findings]
    tidied = parse(format_file(read.value)).value
    assert tidied is not None and tidied.games == read.value.games
    again = resolve(tidied.games[0], kit_categories())
    assert again.value is not None
    before, after = core_of(game.value).value, core_of(again.value).value
    assert before is not None and after is not None and before.play == after.play


def test_the_table_names_every_sheet_and_no_other() -> None:
    told = {int(number) for number in re.findall(r"^\| (\d+) ", TABLE, re.MULTILINE)}
    assert told == {int(path.stem.split("-")[0]) for path in SHEETS}
