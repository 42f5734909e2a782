"""The card says what the game and its notes say, as plain text and as Markdown too."""

from __future__ import annotations

import pytest
from drawn_games import NAMES, card_for, lanterns, library_game

from compose.draw.card.card import LAST_WORD, CardNotes
from compose.draw.card.text import markdown_of, text_of
from library.load import kit_catalogue

NOTES = CardNotes(
    modifiers=(("kick instead", "every throw is a kick"),),
    known=("every round can end (proved)", "about 4.6 minutes to a round"),
    lineage=("Lanterns", "kick instead"),
)


def card(name, notes=None):
    game = library_game(name)
    return card_for(game, notes, catalogue=kit_catalogue())


@pytest.mark.parametrize("name", NAMES)
def test_every_card_has_what_a_teacher_needs(name):
    made = card(name)
    headings = [part.heading for part in made.sections]
    assert {"You need", "Set up", "How to play", "Take care"} <= set(headings)
    assert {"How to win", "How it ends"} & set(headings)
    facts = dict(made.facts)
    assert {"Ages", "Players", "Court"} <= set(facts)
    assert any(line.startswith("Credit: ") for line in made.footer)
    assert any(line.startswith("Licence: ") for line in made.footer)


@pytest.mark.parametrize("name", NAMES)
def test_the_last_word_is_the_teachers(name):
    care = card(name).section("Take care")
    assert care is not None and care.tone == "care"
    assert care.lines[-1] == LAST_WORD


def test_notes_are_on_the_card():
    made = card_for(lanterns(), NOTES)
    text = text_of(made)
    for words in (
        "Kick instead: every throw is a kick.",
        "Every round can end (proved).",
        "About 4.6 minutes",
        "Made from: Lanterns > kick instead.",
    ):
        assert words in text
    assert [part.heading for part in made.sections][-1] == "Checked and forecast"


def test_without_notes_there_is_no_empty_heading():
    made = card_for(lanterns())
    assert all(part.lines and all(part.lines) for part in made.sections)
    assert made.section("What is changed") is None


def test_cautions_of_the_kit_name_the_kit():
    game = lanterns(kit="1 cloud, like a giant ball", set_up="cloud in the middle")
    care = card_for(game, catalogue=kit_catalogue()).section("Take care")
    assert any(line.startswith("Clouds: ") for line in care.lines)


@pytest.mark.parametrize("name", NAMES)
def test_plain_text_is_complete_and_narrow(name):
    made = card(name, NOTES)
    text = text_of(made)
    assert all(len(line) <= 78 for line in text.splitlines())
    flowing = " ".join(text.split())
    for part in made.sections:
        assert part.heading in text
        assert all(" ".join(line.split()) in flowing for line in part.lines)


@pytest.mark.parametrize("name", NAMES)
def test_markdown_is_complete(name):
    made = card(name, NOTES)
    text = markdown_of(made)
    assert text.startswith(f"# {made.title}\n")
    for part in made.sections:
        assert f"## {part.heading}\n" in text
        assert text.count("- ") >= len(part.lines)
        assert all(line in text.replace("\\", "") for line in part.lines)


def test_markdown_marks_in_a_text_are_escaped():
    game = lanterns(head='cue "Aim *low*_now_"')
    assert "\\*low\\*\\_now\\_" in markdown_of(card_for(game))


def test_a_round_that_goes_on_from_a_level_score_is_not_said_to_end_with_the_clock():
    """What ends before the clock lasts at most so long only where the clock ends it in any case."""
    scores = "a lantern is knocked: the thrower's side scores 1 point"
    ends = {"a draw": "at most 6 minutes", "the next point wins": "6 minutes, longer if level"}
    for last, told in ends.items():
        game = lanterns(when=scores, finish=f"after 6 min: more points wins, else {last}")
        made = card_for(game, None, catalogue=kit_catalogue())
        assert dict(made.facts)["Round"] == told
