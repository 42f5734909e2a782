"""The card of a class says for whom it is, in which hall, and what the minutes of a round are."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal.running import run

CLASS = "class Fell Class\n  class of 25\n  the hall is 30 m by 20 m\n  lesson of 40 min\n"


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", ("For Fell Class: 25 pupils", "Hall: 30 m by 20 m, 600 m2", "at most 6 minutes")),
        ("fr", ("Pour Fell Class : 25 élèves", "Salle : 30 m sur 20 m, 600 m2", "au plus 6 minutes")),
    ],
)
def test_class_hall_and_clock_are_told(tmp_path: Path, language: str, said: tuple[str, ...]) -> None:
    path = tmp_path / "fell.rules"
    path.write_text(CLASS, encoding="utf-8")
    card = " ".join(run("card", "lantern row", "--class", path, "--language", language, code=0).stdout.split())
    assert [each for each in said if each not in card] == []


def test_a_round_that_only_the_clock_ends_lasts_just_so_long() -> None:
    assert "Round: 8 minutes" in " ".join(run("card", "homestead").stdout.split())


def test_what_stands_in_is_told_where_the_kit_is_listed(tmp_path: Path) -> None:
    path = tmp_path / "fell.rules"
    path.write_text(f"{CLASS}  8 foam balls\n  10 cones\n", encoding="utf-8")
    card = " ".join(run("card", "lantern row", "--class", path).stdout.split())
    needed = card[card.index("You need") : card.index("Set up")]
    assert "10 lanterns (5 for each side, like a plastic pin), 0 there, 10 cones can stand in" in needed
