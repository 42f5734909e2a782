"""Players and targets that change sides, roles and places."""

from __future__ import annotations

import pytest

from compose.net.net import Assign, Move
from compose.net.told import Cause
from compose.telling.english.ends import end_words, way_words
from compose.telling.english.moves import move_words
from tests.net.sheet_pieces import KIT, SET_UP, THROW, moves, net, rate, reached


def test_one_side_may_come_to_have_every_player() -> None:
    play = net(
        "a player is hit: that player joins the other side", finish="a side wins when the other side has no players in"
    )
    assert max(state.get("player/north/-/in", 0) for state in reached(play)) == 4
    assert {place.capacity for place in play.places if place.token == "player"} == {4}


def test_one_side_may_come_to_have_every_target() -> None:
    play = net("a cone is knocked: it joins the thrower's side")
    assert max(state.get("target/cone/south/standing", 0) for state in reached(play)) == 4


def test_targets_of_nobody_can_be_taken() -> None:
    play = net(
        "a cone is knocked: it joins the thrower's side",
        "players underarm throw a soft ball at the cones",
        "a side wins when it has 3 cones standing",
        kit="2 soft balls, like a foam ball\n  3 cones",
        set_up="1 soft ball in each half\n  cones on the middle line",
    )
    won = [state for state in reached(play) if state.get("target/cone/north/standing", 0) == 3]
    assert won and {end.winner for end in play.ends} == {"north", "south"}
    assert max(state.get("target/cone/-/standing", 0) for state in reached(play)) == 3


@pytest.mark.parametrize(("claim", "at_once"), [("1 cone standing", False), ("at least 1 cones standing", True)])
def test_a_bare_number_is_exact_where_play_makes_less_of_it(claim: str, at_once: bool) -> None:
    states = reached(net(finish=f"a side loses when it has {claim}"))
    assert (len(states) == 1) == at_once


def test_a_bare_number_is_enough_where_play_builds_it_up() -> None:
    when = "a cone is knocked: the thrower's side scores 2 points"
    play = net(when, finish="a side wins when it has 3 points")
    assert max(state.get("points/north", 0) for state in reached(play)) == 3


def test_points_are_counted_as_far_as_any_sentence_asks() -> None:
    when = "a cone is knocked: the thrower's side scores 1 point\n  a side has 30 points: the other side loses 5 points"
    play = net(when, finish="after 5 min: more points wins")
    assert {place.capacity for place in play.places if place.token == "points"} == {30}
    play = net(when.split("\n")[0], finish="the round ends when a side has 40 points")
    assert {place.capacity for place in play.places if place.token == "points"} == {40}


def test_who_acts_is_the_side_that_a_while_speaks_of() -> None:
    when = (
        "a player is hit while the thrower's side has 1 player in: that player is out\n"
        "  a player is hit while it has 2 players in: that player is out"
    )
    states = reached(net(when, finish="a side wins when the other side has no players in"))
    one_each = {"player/north/-/in": 1, "player/south/-/in": 1}
    assert any(one_each.items() <= state.items() for state in states)
    assert any(state.get("player/north/-/in", 0) == 0 for state in states)


def test_everything_starts_again_wherever_it_went() -> None:
    """Also where a place is first spoken of after the sentence that starts everything again."""
    when = (
        "a cone is knocked: everything starts again and the thrower's side scores 1 point\n"
        "  a player is hit: that player waits in the rest queue"
    )
    play = net(when, finish="the first side to 2 points wins")
    again = moves(play, "everything starts again")
    assert again
    for move in again:
        assert {effect.place for effect in move.effects if isinstance(effect, Assign)} >= {
            number for number, place in enumerate(play.places) if place.token in ("player", "ball", "target")
        }


def test_who_wins_where_the_round_ends_depends_on_who_is_spoken_of() -> None:
    play = net(finish="the round ends when a side has no cones standing, the other side wins")
    assert {end.winner for end in play.ends} == {"north", "south"}


def test_a_rule_that_wins_is_shown_at_its_own_sentence() -> None:
    when = (
        "a player is hit: the thrower's side loses 1 point\n  a cone is knocked: the thrower's side wins\n"
        "  a ball is missed: the thrower's side scores 1 point"
    )
    play = net(when, finish="the first side to 3 points wins")
    (rule,) = {end.rule for end in play.ends if end.told.because is Cause.RULE}
    assert rule.text == "a cone is knocked: the thrower's side wins"


@pytest.mark.parametrize(
    ("claim", "way", "of_winner"),
    [
        ("it has at most 1 cone standing", "the other side has at most 1 cone standing", False),
        ("the other side has 2 cones standing", "it has 2 cones standing", True),
    ],
)
def test_to_lose_is_a_way_in_which_the_other_wins(claim: str, way: str, of_winner: bool) -> None:
    play = net(finish=f"a side loses when {claim}")
    assert {(end.winner, way_words(play, end)) for end in play.ends} == {("north", way), ("south", way)}
    has = {"north": "south", "south": "north"} if not of_winner else {"north": "north", "south": "south"}
    assert {end_words(play, end) for end in play.ends} == {
        f"{side} wins: {has[side]} has {claim.partition(' has ')[2]}" for side in ("north", "south")
    }


ROLE = "north and south, 1 to 9 players each\n  role guard: 1 player of each side"
QUEUE = "a player is hit: that player waits in the rest queue"


def test_only_one_of_those_who_wait_is_the_first_in_line() -> None:
    when = f"{QUEUE}\n  a ball is caught: the first in the catcher's rest queue returns"
    play = net(when, "players underarm throw a soft ball at the cones of the other side", sides=ROLE)
    caught = moves(play, "a north player throws", "south cone", "south catches")
    waiting = {"south_-_rest_queue": 1, "south_guard_rest_queue": 1}
    (missed,) = moves(play, "a north player throws", "south cone", "misses")
    assert [rate(play, move, **waiting) for move in caught][:2] == [rate(play, missed) / 2] * 2
    for move in caught[:2]:
        assert [effect.amount for effect in move.effects[1:] if isinstance(effect, Move)] == [1]


def test_a_teacher_frees_at_one_pace_however_many_roles_wait() -> None:
    play = net(QUEUE, f"{THROW}\n  the teacher frees the first in each queue", sides=ROLE)
    freed = moves(play, "the teacher frees", "of south")
    waiting = {"south_-_rest_queue": 1, "south_guard_rest_queue": 1}
    assert len(freed) == 2 and sum(rate(play, move, **waiting) for move in freed) == 1


@pytest.mark.parametrize(("queue", "sides"), [("each queue", 2), ("north's queue", 1), ("the queue of north", 1)])
def test_whose_queue_is_freed(queue: str, sides: int) -> None:
    throw = "players underarm throw a soft ball at the players of the other side"
    play = net(QUEUE, f"{throw}\n  the teacher frees the first in {queue}")
    assert len(moves(play, "the teacher frees")) == sides


BEHIND = "a missed ball rests behind the back line of the other side"
MIDDLE = "1 soft ball in the half of north\n  1 soft ball in the middle\n  cones on the back line of their side"


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("a ball is held at most 10 s", {"a north player", "a south player"}),  # taken for granted
        ("north players fetch balls from the middle", {"a north player"}),
        ("nobody fetches balls from the middle", set()),
    ],
)
def test_a_line_of_the_sheet_wins_over_what_is_taken_for_granted(line: str, who: set[str]) -> None:
    play = net(play=f"players underarm throw a soft ball at the cones\n  {line}", kit=KIT, set_up=MIDDLE)
    assert {move_words(play, move).partition(" fetches")[0] for move in moves(play, "fetches", "the middle")} == who


def test_one_teacher_fetches_one_ball_at_a_time() -> None:
    line = "the teacher fetches soft balls from behind each back line"
    play = net(play=f"players underarm throw a soft ball at the cones\n  {BEHIND}\n  {line}", set_up=SET_UP)
    (move, _) = moves(play, "the teacher fetches")
    assert rate(play, move, behind_back_line_north=2) == 1
