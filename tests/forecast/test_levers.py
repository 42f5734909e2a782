"""What is advised for the length of a round speaks of what the game has, and gives it nothing that it has already."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from compose.forecast.findings.levers import balls_sent, has, to_make_longer, to_make_shorter, to_reach
from compose.net.net import Net
from compose.staging.resolved import resolved
from library import game_paths
from tests.interpreter.sheets import game_in, library_game, net_in

LEVEL = """\
    game Level Row
      ages 8 to 12
      skills overarm throw
      about "Knock the other side's lanterns."
    space
      court 18 m by 9 m, halved across
    sides
      north and south, 6 to 14 players each, mirrored
    kit
      8 foam balls
      5 lanterns for each side, like a plastic pin
    set-up
      lanterns on the back line of their side, evenly spaced
      4 foam balls in each half
    play
      players stay in their half
      players overarm throw a foam ball at the lanterns of the other side
    when
      a lantern is knocked: it stands up again and the thrower's side scores 1 point
    finish
      after 6 min: more points wins, {decided}
    """
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
    has_clock = resolved(library_game(name)).play.bell is not None
    assert any("set a clock" in words for words in said) != has_clock
    assert ("give the clock less time" in said) == has_clock
    assert ("use more balls" in said) == bool(balls_sent(net))
    assert ("play best of several rounds" in said) == net.match.one_round


@pytest.mark.parametrize("decided", ["else a draw", "else the next point wins", "else the next lantern knocked wins"])
def test_no_clock_is_advised_where_a_level_score_is_played_on(decided: str) -> None:
    net = net_in(game_in(LEVEL.format(decided=decided)))
    said = list(to_make_shorter(net))
    assert not [words for words in said if "set a clock" in words]
    assert any("be a draw" in words for words in said) == ("next" in decided)
