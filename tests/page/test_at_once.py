"""What several requests of the page read in the same moment, each in a thread of its own."""

from __future__ import annotations

import subprocess
import sys
from threading import Thread

import pytest

from grammar.sentences import kinds
from grammar.sentences.base import Node

RESOLVED = """
import sys, threading
sys.setswitchinterval(1e-6)
import library
from compose.fit.fit import fit
from compose.page.answers.at_hand import game_of
from compose.page.answers.group import group_of
from compose.page.kept import USUAL
from compose.staging.resolved import resolved
games = [game_of((path.read_text(encoding="utf-8"),)).value for path in library.game_paths()]
begin, wrong = threading.Barrier(4), []

def ask(first: int) -> None:
    begin.wait()
    try:
        for game in games[first:] + games[:first]:
            assert resolved(game).title == game.title
            fit(game, group_of(USUAL).value, library.norms(), library.kit_names(), None)
    except Exception as error:
        wrong.append(repr(error))

threads = [threading.Thread(target=ask, args=(number,)) for number in range(4)]
for each in threads:
    each.start()
for each in threads:
    each.join()
sys.exit("; ".join(wrong) or 0)
"""


def ends_well(program: str) -> None:
    """Run it in a process of its own; what it says as it ends is what went wrong."""
    ended = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=300, check=False)
    assert ended.returncode == 0, ended.stderr


def test_the_second_of_two_requests_finds_all_sentences(monkeypatch: pytest.MonkeyPatch) -> None:
    """One asks for a sentence while another has only begun to list them."""
    named = kinds.rule_name
    found = list[str]()

    def asked_meanwhile(kind: type[Node]) -> str:
        if not found:
            found.append("")
            other = Thread(target=lambda: found.append(kinds.kind_of("ages").__name__))
            other.start()
            other.join()
        return named(kind)

    kinds._of_games.cache_clear()
    monkeypatch.setattr(kinds, "rule_name", asked_meanwhile)
    assert kinds.kind_of("attempt").__name__ == "Attempt"
    assert found == ["", "Ages"]


def test_games_are_staged_side_by_side() -> None:
    ends_well(RESOLVED)
