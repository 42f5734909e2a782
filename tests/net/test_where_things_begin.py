"""Each thing begins where the set-up says, each ball comes in where its side is, and what is taken about is no ball."""

from __future__ import annotations

from compose.net.on_the_way import taken_about
from tests.net.sheet_pieces import net, reached

TRACKS = """court 18 m by 9 m, halved across
  drift track: 6 steps, from north to south
  mud track: 6 steps, from north to south"""
MOVED = """a raft is knocked: it moves 1 step away from the thrower
  a sledge is knocked: it moves 1 step away from the thrower"""
TAKEN = """players take an acorn from the middle to their peat base
  players roll a soft ball at the cones of the other side"""


def test_each_thing_begins_on_its_own_step() -> None:
    play = net(
        MOVED,
        "players underarm throw a soft ball at the raft or the sledge",
        "a side wins when the other side has a raft at home",
        space=TRACKS,
        kit="2 soft balls, like a foam ball\n  1 raft, like a gym ball\n  1 sledge, like a gym ball",
        set_up="1 soft ball in each half\n  raft on step 4 of the drift track\n  sledge on step 2 of the mud track",
    )
    begin = {place.name: place.start for place in play.places if place.start and place.name.startswith("step/")}
    assert begin == {"step/raft/4": 1, "step/sledge/2": 1}


def test_to_one_side_alone_all_balls_come_in() -> None:
    play = net(
        "a pin is knocked: it stays down\n  after 1 min: another 2 soft balls come in",
        "players roll a soft ball at the pins",
        "toads win when they have no pins standing\n  after 5 min: nobody wins",
        space="court 18 m by 9 m, in one piece",
        sides="toads, 2 to 6 players",
        kit="3 soft balls, like a foam ball\n  2 pins, like a plastic pin",
        set_up="1 soft ball in the middle\n  pins on a back line",
        players={"toads": 2},
    )
    balls = {sum(count for name, count in state.items() if name.startswith("ball/")) for state in reached(play)}
    assert balls == {1, 3}


def test_what_is_taken_from_place_to_place_is_taken_about_even_if_it_is_like_a_ball() -> None:
    play = net(
        "a side has 3 acorns in its peat base: it scores 1 point\n  a cone is knocked: it stays down",
        TAKEN,
        "the first side to 1 point wins",
        space="court 18 m by 9 m, in one piece\n  peat base: 2 m deep, before each back line",
        kit="5 acorns, like a tennis ball\n  2 soft balls, like a foam ball\n  2 cones for each side",
        set_up="acorns in the middle\n  2 soft balls in the middle\n  cones on the back line of their side",
    )
    balls = [place for place in play.places if place.token == "ball"]
    assert {place.kind for place in balls} == {"acorn", "soft ball"}
    assert all(taken_about(play, place) == (place.kind == "acorn") for place in balls)
