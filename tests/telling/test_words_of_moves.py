"""Moves and states in a teacher's words: a pass arrives, and only the other side catches."""

from __future__ import annotations

from told_games import PASSES, POSSESSION

from compose.net.from_game import net_of
from compose.telling.english.moves import move_words
from tests.interpreter.sheets import game_in, granted


def _moves(text: str, outcome: str) -> set[str]:
    net = net_of(game_in(text), granted()).value
    assert net is not None
    passes = [move for move in net.transitions if move.attempt.skill == "pass"]
    return {move_words(net, move) for move in passes if move.outcome == outcome}


def test_a_pass_arrives_and_only_the_other_side_catches() -> None:
    for text in (PASSES, POSSESSION):
        arrived = _moves(text, "success")
        assert arrived and all("and it arrives" in said and "catch" not in said for said in arrived), arrived
    assert all("catch" in said for said in _moves(POSSESSION, "caught")) and _moves(POSSESSION, "caught")
