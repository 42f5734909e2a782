"""A line of the set-up without a number has what the others leave; more than there are is refused, side by side."""

from __future__ import annotations

import pytest

import library
from compose.staging.laid_out import laid_out
from compose.telling.read_back import read_back
from compose.telling.wording import ENGLISH
from grammar.core.reading.from_game import core_of
from grammar.game import Game
from grammar.parse import parse, parse_bytes
from grammar.resolve import resolve

BASE = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
ON_THE_LINE = "lanterns on the back line of their side, evenly spaced"
PLAYERS = {"north": 8, "south": 8}


def read(*lines: str) -> tuple[Game | None, list[str]]:
    sheet = parse(BASE.replace(f"  {ON_THE_LINE}", "\n".join(f"  {line}" for line in lines))).value
    assert sheet is not None
    found = resolve(sheet.games[0], library.kit_categories())
    return found.value, [finding.code for finding in found.findings]


def standing(*lines: str) -> list[tuple[float, float]]:
    game, codes = read(*lines)
    assert game is not None, codes
    floor = laid_out(game, PLAYERS)
    return sorted((round(item.x, 1), round(item.y, 1)) for item in floor.items if item.category == "target")


@pytest.mark.parametrize("other", ["3 lanterns lying in each half", "3 lanterns beside the court"])
def test_the_order_of_lines_does_not_decide_where_things_stand(other: str) -> None:
    there = standing(ON_THE_LINE, other)
    assert there == standing(other, ON_THE_LINE) != standing(ON_THE_LINE)
    assert len(there) == 10


def test_it_is_told_that_a_line_has_the_rest() -> None:
    game, _ = read(ON_THE_LINE, "3 lanterns beside the court")
    assert game is not None
    core = core_of(game, library.granted_sheet()).value
    assert core is not None
    told = [said.text for section in read_back(core, ENGLISH).sections for said in section.said]
    assert "Put the lanterns of each side on its back line, as many as are left, evenly spaced." in told


@pytest.mark.parametrize(("number", "too_many"), [(2, False), (3, True)])
def test_of_what_each_side_has_no_more_is_placed_than_it_has(number: int, too_many: bool) -> None:
    _, codes = read(f"3 {ON_THE_LINE}", f"{number} lanterns before the back line of their side")
    assert ("G-too-many" in codes) == too_many == bool(codes)


@pytest.mark.parametrize("who", ["hedgers score", "the keeper's side scores"])
def test_where_each_plays_alone_all_or_a_keeper_cannot_score(who: str) -> None:
    path = next(path for path in library.game_paths() if path.stem == "burr-toss")
    text = path.read_text(encoding="utf-8").replace("the thrower's side scores", who)
    sheet = parse_bytes(text.encode(), path.name).value
    assert sheet is not None
    found = resolve(sheet.games[0], library.kit_categories())
    assert [finding.code for finding in found.findings] == ["G-sense"]
