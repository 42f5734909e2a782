"""One list of cautions: whatever is printed of a game for a class says all of it, with the things that stand in."""

from __future__ import annotations

import pytest
from attrs import evolve
from drawn_games import library_game

import library
from compose.draw.card.of_remix import card_of_remix
from compose.draw.card.text import text_of
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.fit.fit import fit
from compose.modifiers.apply import remix
from compose.page.answers.for_class import for_class
from compose.staging.school_class import InCupboard, SchoolClass, some_class
from compose.telling.cautions import cautions_told
from compose.telling.wording import ENGLISH
from compose.terminal.fitting import fit_lines
from compose.terminal.staging_json import staging_json
from grammar.span import nowhere

STEMS = sorted(path.stem for path in library.game_paths())


def cupboard_without(stem: str) -> SchoolClass:
    """A class with plenty of all that there is, but for what the game lists."""
    kit = library.kit_names()
    listed = {kit[line.like].name for line in library_game(stem).kit if line.like in kit}
    left = [name for name in library.kit_catalogue() if name not in listed]
    things = tuple(InCupboard(name, 40, name, nowhere()) for name in left)
    return evolve(some_class(24), cupboard=things, lesson_min=45.0)


@pytest.mark.sample(12)
@pytest.mark.parametrize("stem", STEMS)
def test_all_outputs_say_the_same_cautions(stem: str) -> None:
    game = library_game(stem)
    found = fit(game, cupboard_without(stem), library.norms(), library.kit_names(), 4.0)
    staging = found.staging
    told = cautions_told(staging.cautions)
    stand_ins = {each.like for row in staging.kit for each in row.stand_ins}
    for name in stand_ins:
        item = library.kit_catalogue()[name]
        assert not item.caution or any(item.plural in line.lower() for line in told), name
    made = remix(game, [], library.kit_names()).value
    assert made is not None
    card = card_of_remix(made, staging)
    lesson = lesson_card(lesson_table([Planned(game, staging, 4.0)], library.norms()), "Monday")
    sections = [each.section("Take care") for each in (card, lesson)]
    every = [
        *(part.lines for part in sections if part is not None),
        [line.removeprefix("Mind: ") for line in fit_lines(found)],
        staging_json(staging)["cautions"],
        for_class(found, ENGLISH, "a").cautions,
    ]
    assert len(every) == 5
    for lines in every:
        assert [line for line in told if line not in lines] == [], stem
    flat = " ".join(text_of(card).split())
    assert all(line in flat for line in told)


def test_a_bag_in_the_place_of_a_ball_is_named_with_its_caution() -> None:
    bags = (InCupboard("beanbag", 12, "beanbag", nowhere()),)
    group = evolve(some_class(24), cupboard=bags)
    found = fit(library_game("winter-store"), group, library.norms(), library.kit_names())
    told = cautions_told(found.staging.cautions)
    assert "Beanbags: not at people: it is heavy for its size. Lying bags are slippery under a shoe." in told
