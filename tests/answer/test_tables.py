"""What judges many games at once finds what the check finds in each: the table of mixtures, and the shelf."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

import library
from compose.share.pack.item import item_of, sheets_in
from compose.share.shelf.verdicts import judge
from grammar.parse import parse_bytes
from tests.interpreter.sheets import library_game

sys.path.insert(0, str(Path(__file__).parents[1] / "terminal"))
sys.path.insert(0, str(Path(__file__).parents[1] / "share"))
from running import run_json
from shelves import given, opened

MODIFIERS = ("add balls", "nobody is out", "first to points", "fewer balls", "roll instead")
GAMES = ("lantern-row", "heron-and-pike", "sledge-road", "cairn-keepers")


def to_mend(*words: str) -> set[str]:
    """Codes that the check warns of."""
    return {each["code"] for each in run_json("check", *words)["findings"] if each["severity"] != "note"}


@pytest.mark.parametrize("name", GAMES)
def test_the_table_finds_what_the_check_finds(name: str) -> None:
    least = ("--pupils", str(sum(side.least for side in library_game(name).sides)))
    only = [word for modifier in MODIFIERS for word in ("--only", modifier)]
    before = to_mend(name, *least)
    seen = set()
    for cell in run_json("mix", name, *only)["cells"]:
        if cell["verdict"] in ("fits", "creates a finding"):
            now = to_mend(name, "--with", cell["modifier"], *least)
            assert set(cell["codes"]) == {code for code in now if code[:2] != "M-"} - before, cell["modifier"]
            seen.add(cell["modifier"])
    assert seen


def test_the_shelf_finds_what_the_check_finds(tmp_path: Path) -> None:
    path = {each.stem: each for each in library.game_paths()}
    hard = path["heron-and-pike"].read_text(encoding="utf-8").replace("6 foam balls", "6 foam balls, like a handball")
    sheets = {"sound": path["lantern-row"].read_text(encoding="utf-8"), "hard": hard}
    with opened(tmp_path / "shelf") as shelf:
        for stem, text in sheets.items():
            sheet = tmp_path / f"{stem}.rules"
            sheet.write_text(text, encoding="utf-8")
            for found in sheets_in(given(parse_bytes(text.encode(), f"{stem}.rules"))):
                given(shelf.put(item_of(found)))
        assert given(judge(shelf)) == len(sheets)
        judged = sorted(number for (number,) in shelf.index.execute("SELECT to_mend FROM verdicts WHERE whole"))
    checked = [run_json("check", tmp_path / f"{stem}.rules") for stem in sheets]
    assert judged == sorted(each["to_mend"] for each in checked) and judged[0] == 0 < judged[-1]
