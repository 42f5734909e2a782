"""The SVG is well-formed, described, small, the same every time, and pinned for Lantern Row.

After a change that is meant, write the pinned file anew: RULEWEAVE_GOLDEN=write python -m pytest tests/draw
"""

from __future__ import annotations

import os
from xml.etree import ElementTree

import pytest
from attrs import evolve
from drawn_games import GOLDEN, NAMES, laid_out, lanterns, library_game

from compose.draw.plan.plan import plan_of
from compose.draw.signs.to_svg import svg_of

SPACE = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", NAMES)
def test_every_plan_is_a_small_described_picture(name):
    game = library_game(name)
    text = svg_of(plan_of(game, laid_out(game)))
    root = ElementTree.fromstring(text)
    assert root.tag == f"{SPACE}svg"
    assert root.get("role") == "img"
    assert root.find(f"{SPACE}title").text == f"Floor plan of {game.title}"
    assert f"{game.court_m[0]:g} m by {game.court_m[1]:g} m" in root.find(f"{SPACE}desc").text
    assert len(text.encode()) < 40_000
    assert {element.tag.removeprefix(SPACE) for element in root} <= {"title", "desc", "path", "circle", "text"}


def test_numbers_have_one_decimal_at_most_and_lie_in_the_view():
    game = lanterns()
    root = ElementTree.fromstring(svg_of(plan_of(game, laid_out(game))))
    _left, _top, wide, high = (float(part) for part in root.get("viewBox").split())
    for circle in root.iter(f"{SPACE}circle"):
        x, y, radius = (circle.get(key) for key in ("cx", "cy", "r"))
        assert all(len(part.partition(".")[2]) <= 1 for part in (x, y, radius))
        assert float(radius) <= float(x) <= wide - float(radius)
        assert float(radius) <= float(y) <= high - float(radius)


def test_letters_with_a_meaning_in_xml_are_kept():
    game = lanterns()
    drawing = evolve(plan_of(game, laid_out(game)), title="Hare & <Hound>")
    assert ElementTree.fromstring(svg_of(drawing)).find(f"{SPACE}title").text == "Hare & <Hound>"


def test_lantern_row_is_as_pinned():
    game = library_game("lantern-row")
    text = svg_of(plan_of(game, laid_out(game)))
    pinned = GOLDEN / "lantern-row.svg"
    if os.environ.get("RULEWEAVE_GOLDEN") == "write":
        pinned.write_text(text, encoding="utf-8")
    assert text == pinned.read_text(encoding="utf-8")
