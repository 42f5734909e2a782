"""The second reader and the net read every game alike: the same counted states, results and moves."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import pytest

import library
from compose.check import StateSpace, explore
from grammar.game import Game
from tests.interpreter.compare import read_by_net, read_by_reader, same
from tests.interpreter.remixes import fitted, remixed
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import game_in, granted, net_in
from tests.interpreter.small import GAMES, is_countable, players, small
from tests.wrong_games.wrong import PAIRS, Pair

MODIFIERS = [path.stem for path in library.modifier_paths()]
STACKS = (
    ("lantern-row", "kick-instead", "add-balls"),
    ("lantern-row", "more-targets", "time-limit"),
    ("heron-and-pike", "fewer-balls", "nobody-is-out"),
    ("millrace-roll", "roll-instead", "hold-limit"),
    ("ferry-bench", "fewer-balls"),
)
PATTERNS = {
    "starts again": "a cone is knocked: it stays down and the thrower's side scores 1 point\n"
    "  a side has no cones standing: everything starts again",
    "swaps with the queue": "a player is hit: that player changes places with the first in the rest queue\n"
    "  a cone is knocked: the thrower waits in the rest queue and the thrower's side scores 1 point",
    "while lines": "a cone is knocked while it has at least 2 players in: it stays down\n"
    "  a cone is knocked while it has no players in: the thrower's side scores 2 points\n"
    "  a player is hit while the thrower's side has 2 players in: that player waits in the rest queue",
    "wins at once": "a cone is knocked while it has 1 cone standing: the thrower's side wins\n"
    "  a player is hit: the thrower's side loses 1 point and that player joins the other side",
    "goes over": "a cone is knocked: the thrower's side scores 1 point and it joins the other side\n"
    "  a player is hit: play goes on",
    "takes over": "a cone is knocked: it joins the thrower's side\n  a ball is missed: the thrower is out\n"
    "  a side has all cones standing: it scores 3 points",
}
PATTERN_GAME = """
game Pattern
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
kit
  2 soft balls, like a foam ball
  2 cones for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players stay in their half
  players underarm throw a soft ball at the cones or the players of the other side
  the teacher frees the first in each queue
when
  {rules}
finish
  the first side to 3 points wins
  both at once: a draw
"""
SHORT_GAME = PATTERN_GAME.replace("to 3 points", "to 2 points")  # where not the points matter but where balls lie
SHUT = {
    "a strip before each back line": "ditch strip: 2 m deep, before each back line, nobody enters there",
    "a zone across the middle": "ditch zone: 4 m deep, across the middle, nobody enters there",
    "both": "ditch strip: 2 m deep, before each back line, nobody enters there\n"
    "  sky zone: 4 m deep, across the middle, nobody enters there",
}


def agree(game: Game, numbers: dict[str, int]) -> None:
    """Every counted state is reached by both, with the same result, moves out of it and word of the clock."""
    space = explore(net_in(game, numbers))
    assert isinstance(space, StateSpace) and space.complete
    same(read_by_reader(Sheet(game.sheet, granted(), numbers)), read_by_net(space))


@pytest.mark.sample(8)
@pytest.mark.whole("ember-minute")
@pytest.mark.parametrize("name", GAMES)
def test_library_game(name: str) -> None:
    game = small(name)
    agree(game, players(game))


@pytest.mark.parametrize("stack", STACKS, ids=" ".join)
def test_remix(stack: tuple[str, ...]) -> None:
    game = remixed(small(stack[0]), *stack[1:])
    agree(game, players(game))


@pytest.mark.sample(6)
@pytest.mark.parametrize("pair", [pair for pair in PAIRS if not pair.shown], ids=lambda pair: pair.stem)
def test_wrong_game(pair: Pair) -> None:
    game = pair.game("wrong")
    agree(game, players(game))


@pytest.mark.sample(3)
@pytest.mark.parametrize("modifier", MODIFIERS)
def test_every_modifier_on_the_first_game_that_it_fits(modifier: str) -> None:
    game = next((each for each in games_for(modifier) if is_countable(net_in(each, players(each)))), None)
    assert game is not None, f"{modifier} fits no game of the library, nor any remix of one by one modifier"
    agree(game, players(game))


def games_for(modifier: str) -> Iterator[Game]:
    """The games that a modifier makes: of library games, or of what one other modifier makes of them."""
    bases = [small(name) for name in GAMES]
    remixes = (made for base in bases for other in MODIFIERS if (made := fitted(base, other)) is not None)
    for base in itertools.chain(bases, remixes):
        game = fitted(base, modifier)
        if game is not None:
            yield game


@pytest.mark.parametrize("rules", PATTERNS.values(), ids=PATTERNS)
def test_pattern_of_rules(rules: str) -> None:
    agree(game_in(PATTERN_GAME.format(rules=rules)), {"north": 2, "south": 3})


@pytest.mark.parametrize("fetched", [False, True], ids=["lie", "fetched"])
@pytest.mark.parametrize("space", SHUT.values(), ids=SHUT)
def test_balls_stop_where_nobody_enters(space: str, fetched: bool) -> None:
    text = SHORT_GAME.replace("rest queue: beside each half", f"rest queue: beside each half\n  {space}")
    for area in ("ditch strip", "ditch zone", "sky zone") if fetched else ():
        if area in space:
            text = text.replace("\nwhen\n", f"\n  the teacher fetches soft balls from the {area}\nwhen\n")
    agree(game_in(text.format(rules=PATTERNS["while lines"])), {"north": 2, "south": 2})


@pytest.mark.parametrize("space", SHUT.values(), ids=SHUT)
def test_balls_past_their_line_stop_behind_all_that_is_shut(space: str) -> None:
    text = PATTERN_GAME.replace("rest queue: beside each half", f"rest queue: beside each half\n  {space}")
    text = text.replace("at the cones or the players of the other side", "past the back line of the other side")
    rules = "a ball crosses the back line: the thrower's side scores 1 point"
    agree(game_in(text.replace("{rules}", rules)), {"north": 2, "south": 2})


@pytest.mark.parametrize("what", ["balls", "soft balls"])
@pytest.mark.parametrize("where", ["behind the back line", "the ditch strip", "the middle"])
def test_balls_stop_where_nobody_fetches_them(what: str, where: str) -> None:
    strip = "ditch strip: 2 m deep, before each back line, nobody guards there"
    text = SHORT_GAME.replace("rest queue: beside each half", f"rest queue: beside each half\n  {strip}")
    text = text.replace("\nwhen\n", f"\n  nobody fetches {what} from {where}\nwhen\n")
    agree(game_in(text.format(rules=PATTERNS["while lines"])), {"north": 2, "south": 2})


WITH_LIVES = {
    "a life less": "a player is hit: that player loses a life",
    "then waits": "a player is hit: that player loses a life and the thrower's side scores 1 point\n"
    "  a player loses the last life: that player waits in the rest queue",
    "won back": "a player is hit: that player loses a life\n  a ball is caught: the catcher gets a life back\n"
    "  a player loses the last life: the other side scores 2 points and that player joins the other side",
    "who throws": "a ball is missed: the thrower loses a life\n  a player is hit: that player waits in the rest queue",
}


@pytest.mark.parametrize("rules", WITH_LIVES.values(), ids=WITH_LIVES)
@pytest.mark.parametrize("line", ["each player has 2 lives", "north players have 3 lives"])
def test_lives(rules: str, line: str) -> None:
    if "scores" not in rules:
        rules += "\n  a cone is knocked: it stays down and the thrower's side scores 1 point"
    line = line.replace("north players have", "each player of north has")
    text = PATTERN_GAME.replace("\nkit\n", f"\n  {line}\nkit\n").replace("to 3 points", "to 2 points")
    agree(game_in(text.replace("{rules}", rules)), {"north": 2, "south": 2})


ONCE = {
    "the first cone": "the first time, a cone is knocked: the thrower's side scores 2 points",
    "the first hit": "the first time, a player is hit: that player is out and the other side scores 1 point\n"
    "  a cone is knocked: it stands up again and the thrower's side scores 1 point",
    "the first to have none": "the first time, a side has no cones standing: the other side scores 2 points\n"
    "  the first time, a ball is missed: everything starts again",
}


@pytest.mark.parametrize("rules", ONCE.values(), ids=ONCE)
def test_the_first_time(rules: str) -> None:
    agree(game_in(PATTERN_GAME.replace("{rules}", rules)), {"north": 2, "south": 2})


ROWS = {
    "passes": "3 passes in a row: the passer's side scores 1 point",
    "to and fro": "2 passes in a row while it has 2 players in: the other side scores 1 point",
    "anew": "2 passes in a row: everything starts again and it scores 1 point\n  2 throws in a row: that side wins",
}


@pytest.mark.sample(1)
@pytest.mark.parametrize("rules", ROWS.values(), ids=ROWS)
def test_so_many_in_a_row(rules: str) -> None:
    text = PATTERN_GAME.replace("\nwhen\n", "\n  players pass a soft ball to a team-mate, 1 in 10 are caught\nwhen\n")
    text = text.replace("to 3 points", "to 2 points")
    agree(game_in(text.replace("{rules}", f"{rules}\n  a player is hit: that player is out")), {"north": 2, "south": 2})


BY_THE_CLOCK = {
    "all return": "every 2 min: all in each rest queue return\n  a player is hit: that player waits in the rest queue",
    "a loose ball": "after 2 min: a soft ball comes in\n  at half-time: all soft balls are taken away\n"
    "  after 4 min: all soft balls come in",
    "two for two sides": "after 2 min: another 2 soft balls come in\n  every 3 min: a soft ball comes in",
    "parts of the round": "in the last minute, a player is hit: that player is out\n"
    "  in the first 2 min, a cone is knocked: it stands up again\n"
    "  after 5 min, a side has no cones standing: the other side scores 2 points",
    "in their order": "after 90 s: each side scores 1 point\n  every 2 min: everything starts again\n"
    "  after 4 min: all soft balls go to the middle and all players of north are out",
}


@pytest.mark.parametrize("rules", BY_THE_CLOCK.values(), ids=BY_THE_CLOCK)
@pytest.mark.parametrize("play", ["", "in the last minute, points count double", "points count three times"])
@pytest.mark.parametrize("bell", [True, False], ids=["a clock", "none"])
def test_what_the_clock_does(rules: str, play: str, bell: bool) -> None:
    if not bell and any(word in rules + play for word in ("last", "half-time", "every 3 min")):
        return
    if "scores" not in rules:
        rules += "\n  a cone is knocked: it stays down and the thrower's side scores 1 point"
    text = PATTERN_GAME.replace("2 soft balls", f"{2 + _coming(rules)} soft balls")
    text = text.replace("\nwhen\n", f"\n  {play}\nwhen\n" if play else "\nwhen\n")
    text = text.replace("the first side to 3 points wins", "the first side to 2 points wins")
    text += "  after 6 min: more points wins, else fewer cones standing wins\n" if bell else ""
    agree(game_in(text.replace("{rules}", rules)), {"north": 2, "south": 2})


@pytest.mark.parametrize("play", ["", "in the last minute, points count double"])
@pytest.mark.parametrize("rules", ["every 2 min: all in each rest queue return", "a player is hit: that player is out"])
def test_the_next_point_wins(rules: str, play: str) -> None:
    rules = f"{rules}\n  a cone is knocked: it stands up again and the thrower's side scores 1 point"
    text = PATTERN_GAME.replace("\nwhen\n", f"\n  {play}\nwhen\n" if play else "\nwhen\n")
    text = text.replace("the first side to 3 points wins", "after 5 min: more points wins, else the next point wins")
    text = text.replace("  both at once: a draw\n", "  the first side to 4 points wins\n")
    agree(game_in(text.replace("{rules}", rules)), {"north": 2, "south": 1})


def _coming(rules: str) -> int:
    return ("a soft ball comes" in rules) + 2 * ("2 soft balls come" in rules)


@pytest.mark.parametrize("like", ["bell", "plastic pin"])
def test_rolled_balls_stay_below_what_hangs(like: str) -> None:
    text = PATTERN_GAME.replace("2 cones for each side", f"2 cones for each side, like a {like}")
    text = text.replace("underarm throw", "roll").replace("{rules}", PATTERNS["starts again"])
    agree(game_in(text), {"north": 2, "south": 2})
