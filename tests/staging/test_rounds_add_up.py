"""Wherever rounds are named a reader can multiply and add: rounds times their length and the pauses between them are
the minutes told, in both languages."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

import library
from compose.draw.card.text import text_of
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.fit.fit import fit_of
from compose.staging.minutes import whole_rounds
from compose.staging.moving import active_in_whole_lesson
from compose.staging.norms import Ability
from compose.telling.amounts import rounds_in_lesson, rounds_said
from compose.telling.wording import Wording, wording_of
from compose.terminal.fitting import fit_lines
from tests.interpreter.sheets import library_game
from tests.staging.ten_cases import Case, staging_of

TIME = r"([\d.,]+) (min|s)"
ADDED = {
    "en": re.compile(rf"(\d+) rounds of about {TIME}, {TIME} between: ([\d.,]+) min"),
    "fr": re.compile(rf"(\d{{1,3}}(?: \d{{3}})*) manches de {TIME} environ, {TIME} entre deux : ([\d.,]+) min"),
}
GAMES = tuple(path.stem for path in library.game_paths())


def minutes_of(number: str, unit: str) -> float:
    return float(number.replace(",", ".")) / (60 if unit == "s" else 1)


def added_up(text: str, wording: Wording) -> list[tuple[float, float]]:
    """Of every row of rounds in a text: what a reader adds up, and what is told; in minutes."""
    found = ADDED[wording.language[:2]].findall(re.sub(r"\s+", " ", text))
    return [
        (
            number * minutes_of(each, unit) + (number - 1) * minutes_of(pause, of_pause),
            minutes_of(whole, "min"),
        )
        for rounds, each, unit, pause, of_pause, whole in found
        for number in (int(rounds.replace(" ", "")),)
    ]


@given(st.floats(0.05, 30), st.floats(0, 3), st.floats(1, 200), st.sampled_from(["en", "fr"]))
def test_what_is_told_of_rounds_adds_up(round_min: float, pause: float, within: float, language: str) -> None:
    wording, rounds = wording_of(language), whole_rounds(round_min, pause, within)
    assert rounds.minutes <= within + 1e-6
    assert rounds.number == 0 or rounds.minutes + rounds.pause + rounds.each > within - 1e-6, "one more would fit"
    for text in (rounds_said(rounds, wording), rounds_in_lesson(rounds, rounds, wording)):
        added = added_up(text, wording)
        assert bool(added) is (rounds.number > 1)
        assert all(reader == pytest.approx(told, abs=0.051) for reader, told in added)


@pytest.mark.sample(12)
@pytest.mark.parametrize("language", ["en", "fr"])
@pytest.mark.parametrize("name", GAMES)
def test_rounds_of_every_game_add_up(name: str, language: str) -> None:
    """In fit and in the sheet of a lesson, whose play is the sum of what is told of its games."""
    wording = wording_of(language)
    for pupils in (24, 27):
        staging = staging_of(Case(name, (), pupils))
        if staging.refused:
            continue
        for round_min in (0.27, 1.7, 3.4):
            said = "\n".join(fit_lines(fit_of(staging, library.norms(), round_min), wording))
            planned = Planned(library_game(name), staging, round_min, 0.5)
            table = lesson_table([planned, planned], library.norms())
            sheet = text_of(lesson_card(table, "Monday", wording))
            assert len(added_up(said, wording)) == 1 and len(added_up(sheet, wording)) == 2
            for reader, told in (*added_up(said, wording), *added_up(sheet, wording)):
                assert reader == pytest.approx(told, abs=0.051)
            played = sum(told for _, told in added_up(sheet, wording))
            head = re.search(rf"(?:Play|Jouer) ?: {TIME}", re.sub(r"\s+", " ", sheet))
            assert head and minutes_of(*head.groups()) == pytest.approx(played, abs=0.11)


@pytest.mark.parametrize("name", ["lantern-row", "heron-and-pike", "toll-stone"])
@pytest.mark.parametrize("round_min", [0.5, 4.47, 70.0])
def test_a_lesson_of_one_game_is_as_active_as_the_forecast_says(name: str, round_min: float) -> None:
    staging = staging_of(Case(name, (), 24))
    norms = library.norms()
    table = lesson_table([Planned(library_game(name), staging, round_min, 0.6)], norms)
    said = active_in_whole_lesson(Ability(norms), staging.ages_years, staging.lesson, round_min, 0.6)
    assert table.active == pytest.approx(said)
