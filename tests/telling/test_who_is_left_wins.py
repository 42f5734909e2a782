"""Where those who are left win, no output says that one of them does; where the first to something wins, one does."""

from __future__ import annotations

import pytest

from tests.terminal.running import run

COMMANDS = ("check", "forecast", "card", "understood", "fit")


@pytest.mark.parametrize("language", ["en", "fr"])
@pytest.mark.parametrize("command", COMMANDS)
def test_those_who_are_left_are_several(command: str, language: str) -> None:
    for_whom = ("--pupils", "20") if command != "understood" else ()
    told = " ".join(run(command, "sleet field", *for_whom, "--language", language, code=None).output.split())
    assert "one of the throwers" not in told and "un élève parmi" not in told
    if command in ("check", "card", "forecast"):
        assert ("those left of the throwers" if language == "en" else "qui restent") in told
    assert "those left of" not in " ".join(run(command, "burr toss", *for_whom, code=None).output.split())
