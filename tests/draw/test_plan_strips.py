"""What is clear beside a court is one number on the plan and in what is found of it: it is held against a least."""

from __future__ import annotations

import re

import pytest
from drawn_games import library_game

import library
from compose.draw.plan.of_class import class_plan
from compose.draw.signs.shapes import Label
from compose.page.answers.group import group_of
from compose.staging.staging import Staging, stage
from compose.telling.wording import ENGLISH, Wording, wording_of

SIZES = [(19.7, 10.7), (20.3, 11.25), (21.31, 10.42), (19.92, 12.0)]


def staged_in(long: float, wide: float) -> Staging:
    group = group_of(f"class My class\n  class of 22\n  ages 9 to 10\n  the hall is {long:g} m by {wide:g} m\n").value
    assert group is not None
    return stage(library_game("lantern-row"), library.norms(), library.kit_names(), group)


def clear_on_plan(staging: Staging, wording: Wording = ENGLISH) -> set[str]:
    drawing = class_plan(staging.game, staging, wording=wording)
    labels = [shape.text for shape in drawing.shapes if isinstance(shape, Label)]
    return {each.replace("\xa0", " ") for each in labels if re.fullmatch(r"[\d.,]+[ \xa0]m", each)}


@pytest.mark.parametrize(("long", "wide"), SIZES)
def test_the_plan_says_what_is_found(long: float, wide: float) -> None:
    staging = staged_in(long, wide)
    told = [re.search(r"court is ([\d.]+) m;", each.title) for each in staging.findings if each.code == "F-run-off"]
    found = {f"{each.group(1)} m" for each in told if each is not None}
    assert found and found <= clear_on_plan(staging)


def test_so_it_does_in_french() -> None:
    assert "0,85 m" in clear_on_plan(staged_in(19.7, 10.7), wording_of("fr"))
