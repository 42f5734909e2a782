"""A small sheet with some of its lines exchanged, and its net: what one sentence does, by itself."""

from __future__ import annotations

from collections.abc import Mapping

from compose.check import StateSpace, explore, markings
from compose.net.from_game import net_of
from compose.net.net import Net, Transition
from compose.telling.english.moves import move_words
from grammar.finding import Finding, Outcome
from grammar.game import Game
from tests.interpreter.sheets import game_in, granted, net_in

SPACE = "court 18 m by 9 m, halved across\n  rest queue: beside each half"
KIT = "2 soft balls, like a foam ball\n  2 cones for each side"
SET_UP = "1 soft ball in each half\n  cones on the back line of their side"
THROW = "players underarm throw a soft ball at the cones or the players of the other side"
SIDES = "north and south, 1 to 9 players each"
FINISH = "a side wins when the other side has no cones standing"


def net(
    when: str = "a cone is knocked: it stays down",
    play: str = THROW,
    finish: str = FINISH,
    *,
    space: str = SPACE,
    sides: str = SIDES,
    kit: str = KIT,
    set_up: str = SET_UP,
    players: Mapping[str, int] | None = None,
) -> Net:
    """The net of the sheet with these lines, for two players a side unless said otherwise."""
    game = _game(space=space, sides=sides, kit=kit, set_up=set_up, play=play, when=when, finish=finish)
    return net_in(game, players or {"north": 2, "south": 2})


def refusals(
    when: str, *, space: str, set_up: str, sides: str = SIDES, kit: str = KIT, play: str = THROW
) -> tuple[Finding, ...]:
    """Why the sheet with these lines has no net, for three players a side."""
    outcome = _outcome(space=space, sides=sides, kit=kit, set_up=set_up, play=play, when=when, finish=FINISH)
    assert outcome.value is None
    return outcome.findings


def doubts_of(*, play: str, space: str, kit: str, set_up: str) -> tuple[Finding, ...]:
    """What is said of the sheet with these lines that has a net all the same, for three players a side."""
    when = "a cone is knocked: it stays down"
    outcome = _outcome(space=space, sides=SIDES, kit=kit, set_up=set_up, play=play, when=when, finish=FINISH)
    assert outcome.value is not None
    return outcome.findings


def _outcome(**lines: str) -> Outcome[Net]:
    return net_of(_game(**lines), granted(), {"north": 3, "south": 3})


def _game(**lines: str) -> Game:
    text = "game Pieces\n" + "\n".join(f"{name.replace('_', '-')}\n  {said}" for name, said in lines.items()) + "\n"
    return game_in(text)


def reached(of: Net) -> list[dict[str, int]]:
    """All states that play can reach, as counts by place that are not zero."""
    space = explore(of)
    assert isinstance(space, StateSpace) and space.complete
    names = [place.name for place in of.places]
    return [
        {name: int(count) for name, count in zip(names, row, strict=True) if count}
        for row in markings(space, list(range(space.states)))
    ]


def moves(of: Net, *words: str) -> list[Transition]:
    """The transitions whose telling holds all of the words."""
    return [move for move in of.transitions if all(word in move_words(of, move) for word in words)]


def rate(of: Net, move: Transition, **counts: int) -> float:
    """How many act at once, in the state with these counts (by the last words of a place's name)."""
    table = dict(zip((place.name for place in of.places), of.start(), strict=True))
    for name, count in counts.items():
        (place,) = [each for each in table if each.replace("/", "_").replace(" ", "_").endswith(name)]
        table[place] = count
    row = list(table.values())
    limits = [sum(row[place] for place in limit) for limit in move.rate.limits]
    if move.rate.turns is not None:
        limits.append(max(move.rate.turns[0] - sum(row[place] for place in move.rate.turns[1]), 0))
    result = float(min(limits, default=1))
    for ratio in move.rate.ratios:
        below = ratio.denominator
        whole = below if isinstance(below, int) else sum(row[place] for place in below)
        result *= sum(row[place] for place in ratio.numerator) / whole if whole else 0.0
    return result
