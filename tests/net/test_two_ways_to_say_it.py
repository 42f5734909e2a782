"""Two sentences that come to the same for so many players and things give nets with the same numbers."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from compose.net.net import Net, Shift
from tests.net.exchange_verdicts import numbers
from tests.net.sheet_pieces import SIDES, THROW, net, reached

GUARDS = SIDES + "\n  role guard: 1 players of each side"
GUARD_PLAY = THROW + "\n  guards roll a soft ball at the cones of the other side"
WAITS = "a player is hit: that player waits in the rest queue"
SCORES = "a cone is knocked: it stays down and the thrower's side scores {} point{}"


def played(made: Net) -> object:
    """The net in numbers alone; of the ends only when they hold and who wins."""
    return numbers((made.places, made.transitions, made.reactions, made.ends, made.bell))


def states(made: Net) -> list[list[tuple[str, int]]]:
    """All that play can come to; it goes no further than the ends."""
    return sorted(sorted(state.items()) for state in reached(made))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("all cones down", "at least 2 cones down"),
        ("all players in the rest queue", "at least 2 players in the rest queue"),
        ("all soft balls", "at least 2 soft balls"),
    ],
)
def test_all_there_are_is_their_number(one: str, other: str) -> None:
    found = [net(WAITS, finish=f"a side loses when it has {claim}") for claim in (one, other)]
    assert played(found[0]) == played(found[1])


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("no cones standing", "all cones down"),
        ("at most 1 cones standing", "at least 1 cones down"),
        ("each player in the rest queue", "no players in"),
    ],
)
def test_what_is_up_is_not_down(one: str, other: str) -> None:
    found = [states(net(WAITS, finish=f"a side loses when it has {claim}")) for claim in (one, other)]
    assert found[0] == found[1]


@pytest.mark.parametrize("who", ["guards", "players"])
@pytest.mark.parametrize("players", [2, 3])
def test_all_of_a_role_are_their_number(who: str, players: int) -> None:
    sides: Mapping[str, int] = {"north": players, "south": players}
    number = 1 if who == "guards" else players
    found = [
        net(WAITS, GUARD_PLAY, finish=f"a side loses when it has {claim} {who} in the rest queue", sides=GUARDS,
            players=sides)
        for claim in ("all", f"at least {number}")
    ]  # fmt: skip
    assert played(found[0]) == played(found[1])


@pytest.mark.parametrize(("times", "says"), [(2, "double"), (3, "three times")])
@pytest.mark.parametrize("points", [1, 2])
def test_points_that_count_more_are_more_points(times: int, says: str, points: int) -> None:
    finish = "the first side to 9 points wins"
    counted = net(SCORES.format(points, "s" * (points > 1)), f"{THROW}\n  points count {says}", finish)
    plain = net(SCORES.format(points * times, "s"), THROW, finish)
    assert played(counted) == played(plain)


def test_points_that_are_lost_count_once() -> None:
    loses = "a player is hit: play goes on and the thrower's side loses 1 point"
    shifts = [
        {effect.by for move in net(f"{SCORES.format(1, '')}\n  {loses}", THROW + more,
                                   "the first side to 4 points wins").transitions
         for effect in move.effects if isinstance(effect, Shift)}
        for more in ("", "\n  points count double")
    ]  # fmt: skip
    assert shifts == [{1, -1}, {2, -1}]


def test_the_side_of_a_task_that_one_side_has_is_that_side() -> None:
    sides = f"{SIDES}\n  role warden: 1 players of south"
    found = [net(f"a cone is knocked: it stays down and {who} scores 1 point", sides=sides)
             for who in ("the warden's side", "south")]  # fmt: skip
    assert played(found[0]) == played(found[1])


@pytest.mark.parametrize("event", [
    "3 underarm throws in a row", "everyone holds a ball for 5 s", "a player fouls",
    "a soft ball is held longer than 5 s", "after 2 min", "a ball is caught",
])  # fmt: skip
def test_what_follows_in_two_lines_follows_as_in_one(event: str) -> None:
    finish = "the first side to 4 points wins\n  after 6 min: more points wins, else a draw"
    one, other = "north scores 1 point", "all players change places with all in the rest queue"
    joined, parted = (
        net(when, finish=finish, kit="4 soft balls, like a foam ball\n  2 cones for each side",
            set_up="2 soft balls in each half\n  cones on the back line of their side")
        for when in (f"{event}: {one} and {other}", f"{event}: {one}\n  {event}: {other}")
    )  # fmt: skip
    assert states(joined) == states(parted)
    assert any(count for state in states(joined) for place, count in state if "points" in place)
