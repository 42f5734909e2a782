"""A lesson of several games: the minutes add up, rounds are whole, kit is shared, and its sheet fits on a page."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from drawn_games import NAMES, lanterns, library_game
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from test_plan import covered
from test_remixed_cards import nothing_is_clipped

import library
from compose.draw.card_pdf import pdf_of
from compose.draw.lesson_sheet import lesson_card
from compose.draw.lesson_table import PLAY, Planned, fitted, kit_over, lesson_table
from compose.telling.wording import wording_of


def planned(name, round_min=4.0):
    game = library_game(name)
    return Planned(game, {side.name: side.most for side in game.sides}, round_min)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.sampled_from(NAMES), min_size=1, max_size=3),
    st.lists(st.one_of(st.none(), st.floats(0.5, 30)), min_size=3, max_size=3),
    st.floats(20, 120),
)
def test_the_minutes_add_up(names, rounds, minutes):
    games = [planned(name, length) for name, length in zip(names, rounds, strict=False)]
    table = lesson_table(games, library.norms(), minutes)
    if table.short_min:
        assert not table.slots
        return
    assert table.slots[0].start == 0
    for before, after in zip(table.slots, table.slots[1:], strict=False):
        assert before.minutes >= 0
        assert after.start == pytest.approx(before.end)
    assert table.slots[-1].end == pytest.approx(minutes)
    for slot in table.slots:
        if slot.kind == PLAY and slot.rounds:
            one = games[slot.game]
            again = table.lesson.again
            assert slot.minutes == pytest.approx(slot.rounds * one.round_min + (slot.rounds - 1) * again)


def test_rounds_that_fit():
    assert fitted(10.0, 3.0, 0.5) == (3, 10.0)
    assert fitted(9.9, 3.0, 0.5)[0] == 2
    assert fitted(2.0, 3.0, 0.5) == (0, 2.0)
    assert fitted(2.0, None, 0.5) == (0, 2.0)


def test_a_lesson_too_short_says_by_how_much():
    table = lesson_table([planned("lantern-row"), planned("heron-and-pike")], library.norms(), 20)
    assert table.short_min > 0
    longer = lesson_table(table.games, library.norms(), 20 + table.short_min)
    assert longer.short_min == 0


def test_things_that_are_alike_are_shared():
    lantern, heron = planned("lantern-row"), planned("heron-and-pike")
    kit = {each.name[1]: each for each in kit_over([lantern, heron])}
    assert kit["foam balls"].by_game == (8, 6)
    assert kit["foam balls"].most == 8
    assert kit["plastic pins"].by_game == (10, 6)
    assert kit["plastic pins"].names == (("lantern", "lanterns"), ("stone", "stones"))
    assert kit["red ball" if "red ball" in kit else "red balls"].games == 1


def test_two_kinds_of_one_game_are_not_shared_with_each_other():
    game = lanterns(kit="2 posts for each side, like a skittle", set_up="posts on the middle line")
    kit = kit_over([Planned(game, {"north": 6, "south": 6}, None)])
    assert {each.name[1]: each.most for each in kit if each.line.like == "skittle"} == {"lanterns": 10, "posts": 4}


def test_change_overs_tell_what_to_put_away():
    card = lesson_card(lesson_table([planned("lantern-row"), planned("heron-and-pike")], library.norms(), 45), "Monday")
    second = card.section("2. Heron and Pike").lines
    assert "6 lanterns now serve as stones." in second
    assert any(line.startswith("Put away 2 foam balls and 4 lanterns") for line in second)
    assert any(line.startswith("Bring out 1 red ball") for line in second)


@pytest.mark.parametrize("language", ["en", "fr"])
def test_the_sheet_is_one_whole_page(language):
    table = lesson_table(
        [planned("lantern-row"), planned("heron-and-pike"), planned("quarry-row")], library.norms(), 60
    )
    card = lesson_card(table, "Monday", wording_of(language))
    assert card.plan.box.joined(covered(card.plan)) == card.plan.box
    outcome = pdf_of(card)
    reader = PdfReader(BytesIO(outcome.value))
    assert len(reader.pages) == 1
    page = re.sub(r"\s+", "", reader.pages[0].extract_text())
    assert all(re.sub(r"\s+", "", line) in page for part in card.sections for line in part.lines)
    nothing_is_clipped(outcome.value, "A4")
