"""Every command that looks at situations can be told to look at more of them, and says how."""

from __future__ import annotations

import pytest

from tests.terminal.running import COMMANDS, run, run_json

LOOKING = ("check", "forecast", "card", "booklet", "strip", "lesson", "replay", "differ", "fit")


@pytest.mark.parametrize("command", LOOKING)
def test_each_has_the_same_options(command: str) -> None:
    assert {"states", "memory"} <= {each.name for each in COMMANDS[command].params}


def test_what_was_not_looked_at_is_said_with_the_option_that_looks_further() -> None:
    said = run_json("check", "lantern row", "--states", "50")
    assert said["facts"]["complete"] is False and said["stopped"] is None
    assert 0 < said["facts"]["looked_into"] < said["facts"]["situations"]
    [budget] = [each for each in said["findings"] if each["code"] == "C-budget"]
    assert "--states 200 --memory" in budget["hint"]
    card = " ".join(run("card", "lantern row", "--states", "50").stdout.split())
    assert "situations were looked at; there are more" in card


def test_who_gives_it_seconds_is_told_when_they_stopped_it() -> None:
    said = run_json("check", "lantern row", "--seconds", "0.01")
    assert "--seconds" in said["stopped"] if not said["facts"]["complete"] else said["facts"]["looked_into"] > 0
