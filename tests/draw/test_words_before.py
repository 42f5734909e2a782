"""What an author wrote of a game is shown as words of before where a remix of it no longer does so."""

from __future__ import annotations

import re

import pytest
from drawn_games import NAMES, library_game

import library
from compose.draw.card.of_remix import Look, card_of_remix
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.modifiers.of_library import library_modifiers
from compose.modifiers.remix import Remix
from compose.modifiers.remix_sheet import remix_text
from compose.modifiers.words_before import words_before
from compose.net.lower.doubts import doubts
from compose.staging.resolved import resolved
from compose.staging.staging import stage
from compose.telling.wording import ENGLISH, Wording, with_sheets, wording_of

GONE = {
    "kick instead": re.compile(r"\b(?:roll|throw|strike)(?!n)"),
    "roll instead": re.compile(r"\b(?:throw|kick|strike)(?!n)"),
    "nobody is out": re.compile(r"\b(?:waits? outside|is out|waits? in)\b"),
}


def made_of(name: str, modifier: str) -> Remix | None:
    (chosen,) = [each for each in library_modifiers() if each.name == modifier]
    return remix(library_game(name), [Use(chosen)], library.kit_names()).value


def paper(made: Remix, wording: Wording) -> list[str]:
    """What the game is about and what to say to the class, on its card and in a lesson."""
    staging = stage(made.game, library.norms(), library.kit_names())
    card = card_of_remix(made, staging, Look(wording=wording))
    planned = Planned(made.game, staging, 3.0, before=words_before(made))
    lesson = lesson_card(lesson_table([planned], library.norms()), "A lesson", wording)
    lines = [line for each in (card, lesson) for section in each.sections for line in section.lines]
    return [card.about, *lines]


@pytest.mark.sample(12)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("modifier", GONE)
def test_what_the_remix_no_longer_does_is_told_as_before(name: str, modifier: str) -> None:
    made = made_of(name, modifier)
    if made is None or not made.edits:
        pytest.skip("it does not go with this game")
    told, lines = resolved(made.game).told, paper(made, ENGLISH)
    still = " ".join(line.sentence.words() for part in made.game.sheet.sections for line in part.lines)
    for text in (*told.about, *told.cues):
        gone = GONE[modifier].search(text)
        if gone is None or gone.group() in still:
            continue
        here = [line for line in lines if text.rstrip(".") in line]
        assert here and all(f"Before it was changed: {text}".rstrip(".") in line for line in here)


@pytest.mark.parametrize("modifier", ["add balls", "change ends", "longer court"])
def test_where_players_do_the_same_nothing_is_told_as_before(modifier: str) -> None:
    made = made_of("lantern-row", modifier)
    assert made is not None and not words_before(made)


@pytest.mark.parametrize(
    ("name", "modifier", "told"),
    [
        ("otter-pebbles", "points for hits", "Everybody has two pebbles to lose; a catch wins one back."),
        ("four-becks", "more targets", "Four sides, each with two pails; the last side with a pail standing wins."),
        ("otter-pebbles", "add balls", ""),
        ("four-becks", "add balls", ""),
    ],
)
def test_numbers_and_lives_that_are_no_more_are_of_before(name: str, modifier: str, told: str) -> None:
    made = made_of(name, modifier)
    assert made is not None and made.edits
    assert words_before(made) == ({told} if told else set())
    assert any(f"Before it was changed: {told}" in line for line in paper(made, ENGLISH)) == bool(told)


def test_lives_that_nobody_loses_are_told() -> None:
    made = made_of("otter-pebbles", "points for hits")
    assert made is not None
    for game, lost in ((made.base, True), (made.game, False)):
        told = [each.title for each in doubts(resolved(game)) if "lives" in each.title]
        assert told == ([] if lost else ['"each player has 2 lives" never takes effect.'])


def test_so_it_is_in_french() -> None:
    made = made_of("beacon-wardens", "kick instead")
    assert made is not None
    lines = paper(made, with_sheets(wording_of("fr")))
    assert sum("Avant le changement" in line for line in lines) == 4, "about and a cue, on the card and in the lesson"
    assert not any(line.startswith("Encore une fois") for line in lines)


def test_its_own_sheet_says_that_they_are_to_be_written_anew() -> None:
    kicked, longer = made_of("beacon-wardens", "kick instead"), made_of("beacon-wardens", "longer court")
    assert kicked is not None and longer is not None
    assert "note: Its head still has words of Beacon Wardens" in remix_text(kicked)
    assert "still has words" not in remix_text(longer)
