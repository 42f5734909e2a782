"""Pupils who rest while others play are on the plan, one sign each, and in its words; where nobody rests, none is."""

from __future__ import annotations

from itertools import pairwise

import pytest
from drawn_games import library_game

import library
from compose.draw.plan.of_class import class_described, class_plan, class_plan_on_card
from compose.draw.signs.palette import NOBODY
from compose.draw.signs.shapes import Disc, Drawing, Label
from compose.draw.signs.symbols import player
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.telling.wording import wording_of


def resting_signs(drawing: Drawing) -> list[Disc]:
    """The bodies of players of no side."""
    body = player(NOBODY, 0.0, 0.0, 1.0)[0]
    assert isinstance(body, Disc)
    discs = [shape for shape in drawing.shapes if isinstance(shape, Disc)]
    edges = ((each, each.ink.width_m / each.radius) for each in discs)  # balls have a broader one
    return [each for each, edge in edges if each.ink.fill == NOBODY.fill and edge == pytest.approx(body.ink.width_m)]


@pytest.mark.parametrize(("name", "pupils"), [("kiln-row", 27), ("kiln-row", 18), ("lantern-row", 20)])
@pytest.mark.parametrize("language", ["en", "fr"])
def test_who_rests_is_drawn_once_each(name: str, pupils: int, language: str) -> None:
    game, wording = library_game(name), wording_of(language)
    staging = stage(game, library.norms(), library.kit_names(), some_class(pupils))
    resting = staging.teams.resting
    assert bool(resting) == (name == "kiln-row")
    for drawing in (class_plan(game, staging, wording=wording), class_plan_on_card(game, staging, wording=wording)):
        signs = resting_signs(drawing)
        assert len(signs) == resting
        for each in signs:
            assert drawing.box.holds(each.x, each.y, each.radius)
        for one, other in pairwise(signs):
            assert abs(one.x - other.x) + abs(one.y - other.y) >= 2 * one.radius
        words = [shape.text for shape in drawing.shapes if isinstance(shape, Label)]
        assert any(wording.counted(resting, "pupil", "pupils") in text for text in words) == bool(resting)
    rests = {"en": "Resting", "fr": "repos"}[language]
    assert (rests in class_described(game, staging, wording)) == bool(resting)
    assert (rests in class_plan(game, staging, wording=wording).description) == bool(resting)
