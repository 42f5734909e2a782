"""Who wins, as each output says it: where everybody plays for themselves it is one of them, never all of them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from told_games import ALONE
from told_sheets import row, told

from compose.telling.wording import wording_of
from tests.terminal.running import run

NOBODY = "the round ends when badgers have no players in, nobody wins"
LAST_ONE = ALONE.replace(NOBODY, "badgers win when it has 1 player in")


def test_one_of_those_who_play_for_themselves_wins() -> None:
    assert "One of the badgers wins when they have exactly 1 player in play." in told(LAST_ONE)
    assert "Un élève parmi les blaireaux gagne quand" in told(LAST_ONE, wording_of("fr"))
    assert "A side wins when" in told(row())


@pytest.mark.parametrize("command", ["check", "forecast", "card", "replay"])
def test_every_output_says_so(tmp_path: Path, command: str) -> None:
    path = tmp_path / "last.rules"
    path.write_text(LAST_ONE.lstrip(), encoding="utf-8")
    said = " ".join(run(command, path, "--pupils", "4").stdout.split())
    assert "one of the badgers" in said.lower()
    assert not re.search(r"(?<!one of )the badgers win\b", said)
    assert not re.search(r"\b1 players\b", said)


def test_a_catch_where_each_is_alone_is_by_one_of_them() -> None:
    caught = ALONE.replace("that player is out", "that player is out\n  a ball is caught: the thrower is out")
    assert "is caught by a badger" in told(caught)
