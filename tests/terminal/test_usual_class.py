"""Where nobody says how many pupils there are: as many as are usual for the game, those who rest among them."""

from __future__ import annotations

from pathlib import Path

from running import run

WINNER_STAYS = Path(__file__).parents[1] / "told" / "06-winner-stays.rules"


def test_a_game_in_which_a_side_rests_has_pupils_enough() -> None:
    assert "F-too-few" not in run("check", WINNER_STAYS).output
