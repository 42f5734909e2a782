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


STORE = """\
    game Hazel Store
      ages 8 to 12
    space
      court 20 m by 12 m, in one piece
      store zone: 3 m deep, before a back line, no martens there
      home strip: 1 m deep, before the other back line
    sides
      martens, 2 players
      oak and elm, 4 players each, mirrored
    kit
      12 bean bags
    set-up
      12 bean bags in the store zone
    play
      oak and elm take a bean bag from the store zone to the home strip
      martens touch players of the other side who carry a bean bag
    when
      a player who carries a bean bag is touched: the bean bag goes back
      a bean bag arrives: the carrier's side scores 1 point
    finish
      {end}
      after 3 min: more points wins, else a draw
    """


@pytest.mark.parametrize(
    ("end", "points", "things"),
    [
        ("the round ends when there are no bean bags in the store zone, more points wins", False, True),
        ("the first side to 5 points wins", True, False),
    ],
)
def test_of_what_is_used_up_more_is_advised(end: str, points: bool, things: bool) -> None:
    net = net_in(game_in(STORE.format(end=end)))
    longer = list(to_make_longer(net, clock_stops=False))
    assert ("ask for more points" in longer, "take more of what is to be brought" in longer) == (points, things)
    assert "aim from farther away" not in longer and "use fewer balls" not in longer
    shorter = list(to_make_shorter(net))
    assert ("take fewer of what is to be brought" in shorter) == things
