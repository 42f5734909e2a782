"""A sheet made of the lines of several files, of which some have the same number: what is wrong with one of them hides
no line of another file."""

from __future__ import annotations

from mixtures import mixed, use

import library
from tests.interpreter.sheets import library_game


def test_a_line_that_does_not_fit_hides_no_line_of_the_game() -> None:
    """The line of the raid that cannot stand beside lives has the number of the balls of the game."""
    text = next(path for path in library.modifier_paths() if path.stem == "raid").read_text(encoding="utf-8")
    game = next(path for path in library.game_paths() if path.stem == "rime-harbour").read_text(encoding="utf-8")
    number = next(number for number, line in enumerate(text.split("\n")) if "take a pennant" in line)
    assert "yarn balls" in game.split("\n")[number]
    outcome = mixed(library_game("rime-harbour"), use("raid"), use("three lives"))
    assert [finding.code for finding in outcome.findings] == ["M-fit"]
