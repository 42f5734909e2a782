"""Rounds that a shelf keeps correct the forecast of just that game."""

from __future__ import annotations

from pathlib import Path

import pytest
from running import run, run_json


def keep(shelf: Path, *more: str, minutes: str = "3") -> None:
    run("shelf", "played", "lantern row", "--minutes", minutes, "--winner", "north", "--pupils", "26", *more,
        "--shelf", str(shelf), code=0)  # fmt: skip


def forecast(shelf: Path, *more: str) -> dict[str, dict[str, float]]:
    """Each number that the kept rounds correct, by its name."""
    answer = run_json("forecast", "lantern row", "--pupils", "26", "--seen", "--shelf", str(shelf), *more, code=0)
    return {each["name"]: each for each in answer["with_own_rounds"]["numbers"]}


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    return tmp_path / "shelf"


def test_without_a_shelf_nothing_changes(shelf: Path) -> None:
    assert forecast(shelf) == {}
    assert not shelf.exists()


def test_short_rounds_shorten_the_forecast(shelf: Path) -> None:
    keep(shelf, minutes="2")
    keep(shelf, minutes="2")
    length = forecast(shelf)["mean length"]
    assert length["after"] == pytest.approx((4 * length["before"] + 4.0) / 6)


def test_wins_raise_the_odds_of_the_winner(shelf: Path) -> None:
    keep(shelf)
    found = forecast(shelf)
    assert found["win odds of north"]["after"] > found["win odds of north"]["before"]
    assert found["win odds of south"]["after"] < found["win odds of south"]["before"]


def test_rounds_of_a_remix_or_another_class_are_not_taken(shelf: Path) -> None:
    keep(shelf, "--with", "kick instead")
    keep(shelf, "--class", "5a")
    assert forecast(shelf, "--of-class", "5b") == {}
    assert forecast(shelf, "--of-class", "5a")
