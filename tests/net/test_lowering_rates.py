"""How many act at once, and how often they choose what: worked out by hand for small sheets."""

from __future__ import annotations

import numpy as np
import pytest

from compose.check.condition import holds
from compose.net.net import Net, Transition
from tests.interpreter.sheets import library_game, net_in
from tests.net.sheet_pieces import KIT, SET_UP, THROW, moves, net, rate

TWO_KINDS = "3 soft balls, like a foam ball\n  1 red ball, like a soft volleyball\n  2 cones for each side"
ALL_NORTH = "soft balls in the half of north\n  red ball in the half of north\n  cones on the back line of their side"
CONES = "at the cones of the other side"


def pace(of: Net, *words: str, **counts: int) -> float:
    """Acts at once times share of all transitions with these words that may happen in a state."""
    return sum(rate(of, move, **counts) * move.attempt.share for move in moves(of, *words) if may(of, move, counts))


def may(of: Net, move: Transition, counts: dict[str, int]) -> bool:
    row = list(of.start())
    for name, count in counts.items():
        (place,) = [n for n, p in enumerate(of.places) if p.name.replace("/", "_").replace(" ", "_").endswith(name)]
        row[place] = count
    return bool(holds(move.guard, np.array([row]))[0])


@pytest.mark.parametrize(("players", "balls", "acting"), [(3, 2, 2), (2, 5, 2), (4, 4, 4)])
def test_as_many_act_as_there_are_players_and_balls(players: int, balls: int, acting: int) -> None:
    play = net(play=f"players underarm throw a soft ball {CONES}", players={"north": players, "south": 1})
    assert pace(play, "a north player", "misses", ball_soft_ball_half_north=balls) == acting


@pytest.mark.parametrize(("players", "balls"), [(1, 1), (3, 2), (4, 4)])
def test_one_at_a_time_acts_whoever_stands_ready(players: int, balls: int) -> None:
    line = f"players underarm throw a soft ball {CONES}, only 1 player at a time"
    play = net(play=line, players={"north": players, "south": 1})
    assert pace(play, "a north player", "misses", ball_soft_ball_half_north=balls) == 1
    assert pace(play, "a north player", "misses", ball_soft_ball_half_north=0) == 0


@pytest.mark.parametrize(("players", "balls", "at_once"), [(1, 3, 1), (2, 3, 2), (9, 3, 2), (9, 1, 1)])
def test_two_at_a_time_act_where_so_many_stand_ready_with_balls(players: int, balls: int, at_once: int) -> None:
    line = f"players underarm throw a soft ball {CONES}, only 2 players at a time"
    play = net(play=line, players={"north": players, "south": 1})
    assert pace(play, "a north player", "misses", ball_soft_ball_half_north=balls) == at_once


@pytest.mark.parametrize(("players", "soft", "red"), [(9, 3, 1), (2, 1.5, 0.5)])
def test_two_kinds_of_balls_part_the_players(players: int, soft: float, red: float) -> None:
    play = net(
        play=f"players underarm throw a soft ball {CONES}\n  players kick a red ball {CONES}",
        kit=TWO_KINDS,
        set_up=ALL_NORTH,
        players={"north": players, "south": 1},
    )
    assert pace(play, "a north player throws a soft ball", "misses") == soft
    assert pace(play, "a north player kicks a red ball", "misses") == red


def test_what_only_the_others_may_use_is_in_nobodys_way() -> None:
    """Red balls in the northern half are no use to north: its two players still throw soft ones."""
    play = net(
        play=f"north players underarm throw a soft ball {CONES}\n  south players kick a red ball {CONES}",
        kit=TWO_KINDS,
        set_up=ALL_NORTH,
    )
    assert pace(play, "a north player throws", "misses", ball_soft_ball_half_north=1) == 1


def test_a_role_with_a_ball_of_its_own_acts_by_itself() -> None:
    """One guard with the red ball and three others with three soft ones: all four act."""
    play = net(
        play=f"players underarm throw a soft ball {CONES}",
        kit=TWO_KINDS,
        set_up=ALL_NORTH,
        sides="north and south, 1 to 9 players each\n  role guard: 1 player of each side, uses a red ball",
        players={"north": 4, "south": 1},
    )
    assert pace(play, "a north player", "misses") == 3
    assert pace(play, "a north guard", "misses") == 1


def test_roles_that_share_the_balls_part_them_by_their_numbers() -> None:
    sides = "north and south, 1 to 9 players each\n  role guard: 1 player of each side"
    play = net(play=f"players underarm throw a soft ball {CONES}", sides=sides, players={"north": 4, "south": 2})
    assert pace(play, "a north player", "misses", ball_soft_ball_half_north=2) == 1.5
    assert pace(play, "a north guard", "misses", ball_soft_ball_half_north=2) == 0.5


def test_whom_a_throw_is_meant_for_does_not_slow_it() -> None:
    """Two kinds of players to hit are one choice: half the throws go at cones, half at players."""
    sides = "north and south, 1 to 9 players each\n  role guard: 1 player of each side"
    play = net("a player is hit: that player is out", THROW, sides=sides, players={"north": 2, "south": 4})
    assert pace(play, "north player throws", "south cone", "misses") == pytest.approx(0.25)
    assert pace(play, "north player throws", "at a south player", "misses") == pytest.approx(0.25 * 3 / 4)
    assert pace(play, "north player throws", "at a south guard", "misses") == pytest.approx(0.25 * 1 / 4)


def test_all_throws_at_a_thing_on_a_track_count() -> None:
    play = net_in(library_game("toll-stone"), {"west": 1, "east": 1})
    assert pace(play, "a west player", "misses") == 1
    assert pace(play, "a west player", "misses", step_stone_3=0, step_stone_1=1) == 1


def test_what_the_text_says_of_the_choice() -> None:
    """A quarter at the cones; of the rest each of two other ways has the same part."""
    play = net(
        "a ball crosses the back line: the roller's side scores 1 point\n  a player is hit: that player is out",
        f"players roll a soft ball {CONES}, 1 in 4 of the attempts\n"
        "  players roll a soft ball past the back line of the other side\n"
        "  players overarm throw a soft ball at the players of the other side",
        "the first side to 3 points wins",
    )
    told = {
        words: pace(play, "a north player", words, "misses") for words in ("cone", "back line", "at a south player")
    }
    assert told == {"cone": 0.25, "back line": 0.375, "at a south player": 0.375}


def test_what_cannot_be_chosen_leaves_its_share_to_the_others() -> None:
    """First the posts, then the cairn: in both cases all throws go there."""
    play = net_in(library_game("cairn-keepers"), {"north": 4, "south": 4})
    posts = pace(play, "a north player", "at a south post and knocks")
    assert posts == 4
    assert pace(play, "a north player", "at a south cairn and knocks") == 0
    fallen = {"target_post_south_standing": 0, "target_post_south_down": 4}
    assert pace(play, "a north player", "at a south post and knocks", **fallen) == 0
    assert pace(play, "a north player", "at a south cairn and knocks", **fallen) == 4


def test_with_nothing_left_to_knock_all_throws_go_at_the_players() -> None:
    play = net("a player is hit: that player is out", finish="a side wins when the other side has no players in")
    half = pace(play, "a north player", "at a south player", "misses")
    none_left = {"target_cone_south_standing": 0, "target_cone_south_down": 2}
    assert (half, pace(play, "a north player", "at a south player", "misses", **none_left)) == (0.5, 1)


@pytest.mark.parametrize(("freers", "waiting", "acting"), [(1, 3, 1), (3, 1, 1), (2, 2, 2)])
def test_nobody_frees_more_than_wait(freers: int, waiting: int, acting: int) -> None:
    play = net(
        "a player is hit: that player waits in the rest queue",
        f"{THROW}\n  a freer frees the first in the queue",
        sides=f"north and south, 4 to 9 players each\n  role freer: {freers} player{'s' * (freers > 1)} of each side",
        players={"north": 9, "south": 9},
        kit=KIT,
        set_up=SET_UP,
    )
    assert sum(rate(play, move, **{"north_-_rest_queue": waiting}) for move in moves(play, "frees", "north")) == acting


def test_who_has_balls_of_two_kinds_is_chased_no_more_than_who_has_one() -> None:
    play = net(
        "a player is touched: the ball goes to the middle\n  a ball crosses the back line: it scores 1 point",
        "players touch players of the other side who carry a ball\n"
        "  players roll a soft ball past the back line of the other side\n"
        "  players kick a red ball past the back line of the other side",
        "the first side to 2 points wins",
        space="court 18 m by 9 m, in one piece",
        kit="1 soft ball, like a foam ball\n  1 red ball, like a soft volleyball",
        set_up="north begins with the soft ball\n  north begins with the red ball",
    )
    lost = {"ball_red_ball_hands_north": 0, "ball_red_ball_court_-": 1}
    both, one = (pace(play, "south player goes after", "misses", **counts) for counts in ({}, lost))
    assert both == one == 2


@pytest.mark.parametrize("left", [("pin",), ("post", "pin"), ("tin", "post", "pin"), ("cone", "tin", "post", "pin")])
def test_whatever_still_stands_is_aimed_at_by_all(left: tuple[str, ...]) -> None:
    kinds = ("cone", "tin", "post", "pin")
    play = net(
        "a cone is knocked: it stays down",
        "\n  ".join(f"players roll a soft ball at the {kind}s of the other side" for kind in kinds),
        "a side wins when the other side has no cones standing and it has no posts standing",
        kit="\n  ".join(
            ["2 soft balls, like a foam ball", *(f"2 {kind}s for each side, like a cone" for kind in kinds)]
        ),
        set_up="\n  ".join(
            ["1 soft ball in each half", *(f"{kind}s on the back line of their side" for kind in kinds)]
        ),
    )
    down = {f"target_{kind}_south_{how}": count for kind in kinds if kind not in left
            for how, count in (("standing", 0), ("down", 2))}  # fmt: skip
    assert pace(play, "a north player", "misses", **down) == pytest.approx(1)


def test_while_one_is_on_the_way_all_others_take_what_else_there_is() -> None:
    play = net(
        "a side has 3 logs in its peat base: it scores 1 point",
        "players take a log from the middle to their peat base, only 1 player at a time\n"
        "  players take a stone from the middle to their peat base",
        "the first side to 1 point wins",
        space="court 18 m by 9 m, in one piece\n  peat base: 2 m deep, before each back line",
        kit="5 logs, like a cone\n  5 stones, like a box",
        set_up="logs in the middle\n  stones in the middle",
        players={"north": 3, "south": 1},
    )
    gone = {"player_north_-_in": 2, "north_-_in_log_middle_-": 1, "load_log_middle_-": 4}
    assert pace(play, "a north player runs to a stone") == 1.5
    assert pace(play, "a north player runs to a stone", **gone) == 2
    assert pace(play, "a north player runs to a log", **gone) == 0
