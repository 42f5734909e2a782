"""What is advised for the length of a round speaks of what the game has, and gives it nothing that it has already."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from compose.forecast.findings.levers import balls_sent, has, to_make_longer, to_make_shorter, to_reach
from compose.net.net import Net
from library import game_paths
from tests.interpreter.sheets import library_game, net_in

SPOKEN_OF = {"balls": "ball", "points": "points", "players": "player"}


def advice(net: Net) -> Iterator[str]:
    yield from to_make_shorter(net)
    yield from to_make_longer(net, clock_stops=True)
    yield from to_make_longer(net, clock_stops=False)
    yield from to_reach(net)


@pytest.mark.parametrize("name", [path.stem for path in game_paths()])
def test_what_is_advised_is_there(name: str) -> None:
    net = net_in(library_game(name))
    aims = {move.attempt.aim for move in net.transitions}
    said = list(advice(net))
    assert said
    for words in said:
        assert all(has(net, token) for word, token in SPOKEN_OF.items() if word in words.split()), words
        assert "balls" not in words.split() or balls_sent(net), words
        assert "targets" not in words or aims & {"target", "ring"} or has(net, "target"), words
    assert any("set a clock" in words for words in said) == (net.bell is None)
    assert ("use more balls" in said) == bool(balls_sent(net))
    assert ("play best of several rounds" in said) == net.match.one_round
