"""Who waits for a task comes back by themselves: in the net, and in the time it takes."""

from __future__ import annotations

import pytest
from mixtures import granted_sheet, library_games, made, row, use

from compose.check import check
from compose.net.from_game import net_of
from compose.net.net import Move, Net, Transition
from compose.telling.english.moves import move_words


def net() -> Net:
    found = net_of(made(row(), use("out to a task", time=20)), granted_sheet(), {"north": 3, "south": 3})
    assert found.value is not None
    return found.value


def returning(made_of: Net) -> list[Transition]:
    """The moves by which somebody comes back."""
    return [each for each in made_of.transitions if "comes back" in move_words(made_of, each)]


def test_one_move_for_each_side_back_from_the_task() -> None:
    moves = returning(net())
    assert [move_words(net(), each) for each in moves] == [
        "a north player comes back from the task queue",
        "a south player comes back from the task queue",
    ]
    for each in moves:
        (effect,) = each.effects
        assert isinstance(effect, Move) and effect.amount == 1
        assert net().places[effect.source].name.endswith("task queue")
        assert net().places[effect.target].name.endswith("/in")
        assert each.forced and each.side is None


def test_everyone_who_waits_is_at_it_at_once() -> None:
    """Three who wait come back three times as fast as one: each takes 20 s, so 3 a minute each."""
    move = returning(net())[0]
    (source,) = move.rate.limits
    assert source == (move.effects[0].source,)  # type: ignore[union-attr]
    assert move.attempt.said_per_minute == pytest.approx(3.0)


def test_nobody_is_stranded() -> None:
    result = check(net())
    assert not any(each.code == "C-stranded" for each in result.findings)


def test_library_game_with_the_task_still_ends() -> None:
    game = made(library_games()["heron-and-pike"], use("out to a task"))
    found = net_of(game, granted_sheet(), {"herons": 3, "pikes": 3})
    assert found.value is not None
    facts = check(found.value).facts
    assert facts is not None and set(facts.can_win) == {"herons", "pikes"}
