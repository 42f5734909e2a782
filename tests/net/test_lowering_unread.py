"""What the net does not count is told: room to which nobody is sent, a range of a role, skills that nobody tries."""

from __future__ import annotations

import pytest

from compose.net.from_game import net_of
from tests.interpreter.sheets import game_in, granted
from tests.net.sheet_pieces import FINISH, KIT, SET_UP, SPACE, THROW

WAITS = "a player is hit: that player waits in the rest queue"
ROOM = SPACE.replace("each half", "each half, at most 2 players there")
SIDES = "north and south, 3 to 9 players each"


def told(space: str = SPACE, sides: str = SIDES, when: str = WAITS, head: str = "ages 8 to 12",
         play: str = THROW) -> list[int]:  # fmt: skip
    """The lines of which it is said."""
    sections = {"space": space, "sides": sides, "kit": KIT, "set-up": SET_UP, "play": play, "when": when}
    lines = (f"{name}\n  {said}\n" for name, said in {**sections, "finish": FINISH}.items())
    found = net_of(game_in(f"game Unread\n  {head}\n" + "".join(lines)), granted(), {"north": 3, "south": 3}).findings
    return [each.place.line for each in found if each.code == "N-unread"]


SWAPS = "a player is hit: that player changes places with the first in the rest queue"


@pytest.mark.parametrize(("when", "lines"), [(WAITS, []), (SWAPS, [5]), ("a player is hit: that player is out", [5])])
def test_room_is_read_where_a_rule_sends_somebody(when: str, lines: list[int]) -> None:
    assert told(space=ROOM, when=when) == lines


@pytest.mark.parametrize(("range_", "lines"), [("1", []), ("1 to 2", [8])])
def test_how_many_have_a_role_that_nobody_comes_to_have(range_: str, lines: list[int]) -> None:
    assert told(sides=f"{SIDES}\n  role guard: {range_} players of each side") == lines


@pytest.mark.parametrize("guards", ["0 to 2", "1"])
@pytest.mark.parametrize("becomes", ["is out", "becomes a guard"])
def test_how_many_guard_is_not_read_where_they_all_come_to_it(guards: str, becomes: str) -> None:
    lines = told(
        sides=f"{SIDES}\n  role guard: {guards} players of each side",
        play=f"{THROW}\n  at most 1 guard may guard each target",
        when=f"a player is hit: that player {becomes}",
    )
    assert (17 in lines) == (guards == "0 to 2" and becomes == "becomes a guard")


@pytest.mark.parametrize(("kit", "noted"), [("1 cone for each side", True), ("2 cones for each side", False)])
def test_an_order_of_one_target_is_told(kit: str, noted: bool) -> None:
    play = "players underarm throw a soft ball at the cones of the other side in order"
    stand = "soft balls in each half\n  cones on the back line of their side"
    sections = {"space": SPACE, "sides": SIDES, "kit": f"2 soft balls\n  {kit}", "set-up": stand, "play": play}
    text = "game One\n" + "".join(f"{name}\n  {said}\n" for name, said in {**sections, "finish": FINISH}.items())
    found = net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings
    assert any("in order or not" in each.title for each in found) == noted


@pytest.mark.parametrize(
    ("stand", "noted"),
    [
        (
            SET_UP,
            ["No line says where any post stands, and nobody aims there: the check reckons without it."],
        ),
        (f"{SET_UP}\n  posts on the back line of their side", []),
        (f'{SET_UP}\n  "Two posts show where the bench ends."', []),  # a line for people says what they are for
        (
            f'{SET_UP}\n  "Posters hang on the wall."',
            ["No line says where any post stands, and nobody aims there: the check reckons without it."],
        ),
    ],
)
def test_what_stands_nowhere_is_told(stand: str, noted: list[str]) -> None:
    kit = f"{KIT}\n  2 posts for each side, like a cone"
    sections = {"space": SPACE, "sides": SIDES, "kit": kit, "set-up": stand, "play": THROW, "when": WAITS}
    text = "game Bare\n" + "".join(f"{name}\n  {said}\n" for name, said in {**sections, "finish": FINISH}.items())
    found = net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings
    assert [each.title for each in found if each.code == "N-unread"] == noted


def test_a_role_that_grows_is_read() -> None:
    sides = f"{SIDES}\n  role guard: 1 to 2 players of each side"
    assert told(sides=sides, when="a player is hit: that player becomes a guard") == [5]  # the queue, idle then


@pytest.mark.parametrize(("head", "lines"), [("skills underarm throw, dodge", []), ("skills kick, dodge", [2])])
def test_a_skill_that_nobody_can_try(head: str, lines: list[int]) -> None:
    assert told(head=head) == lines


LOST = "a player is hit: that player loses a life"


@pytest.mark.parametrize(
    ("when", "halves", "end", "noted"),
    [
        (f"{LOST} and the thrower's side scores 1 point", "two halves of 3 min", "more lives wins", True),
        (f"{LOST} and the thrower's side scores 1 point", "two halves of 3 min", "more points wins", False),
        (f"{LOST} and the thrower's side scores 1 point", "best of 3 rounds", "more lives wins", False),
        (LOST, "two halves of 3 min", "more lives wins", False),
    ],
)
def test_what_a_half_compares_besides_the_points_that_are_added(when: str, halves: str, end: str, noted: bool) -> None:
    sections = {"space": SPACE, "sides": f"{SIDES}\n  each player has 2 lives", "kit": KIT, "set-up": SET_UP}
    finish = f"{halves}\n  after 3 min: {end}, else a draw"
    sections |= {"play": THROW, "when": f"{when}\n  a player loses the last life: that player is out", "finish": finish}
    text = "game Halves\n" + "".join(f"{name}\n  {said}\n" for name, said in sections.items())
    found = net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings
    assert any("only the points are added" in each.title for each in found) == noted


def test_halves_of_three_sides() -> None:
    for sides, lines in (("north and south", []), ("north, south and east", [4])):
        found = net_of(
            game_in(
                "game Halves\n  ages 8 to 12\nspace\n  court 18 m by 9 m, halved across\n"
                f"sides\n  {sides}, 2 to 9 players each\nkit\n  2 foam balls\nset-up\n  foam balls in the middle\n"
                "play\n  players roll a foam ball at the players of the other side\n"
                "finish\n  after 3 min: nobody wins\n"
            ),
            granted(),
            dict.fromkeys(("north", "south", "east"), 2),
        ).findings
        assert [each.place.line for each in found if each.code == "N-unread"] == lines


@pytest.mark.parametrize(("aims", "noted"), [("the cones", True), ("the cones or the pins", False)])
def test_what_a_part_of_a_line_says_of_things_at_which_nobody_aims_is_told(aims: str, noted: bool) -> None:
    sections = {
        "space": "court 18 m by 9 m, halved across",
        "sides": "north and south, 3 to 9 players each, mirrored",
        "kit": "2 soft balls, like a foam ball\n  2 cones for each side\n  2 pins for each side, like a plastic pin",
        "set-up": "soft balls in each half\n  cones on the back line of their side\n  pins in the half of their side",
        "play": f"players underarm throw a soft ball at {aims} of the other side",
        "when": "pins score 1 and cones 2 points",
        "finish": "the first side to 3 points wins",
    }
    text = "game Worth\n" + "".join(f"{name}\n  {said}\n" for name, said in sections.items())
    found = net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings
    assert any("Nobody aims at any pin" in each.title for each in found) is noted


STAND = "a side has no cones standing: the other side scores 1 point and {} stand up again"
DOWN = "a side has {} down: the other side scores 1 point"


@pytest.mark.parametrize(
    ("when", "told"),
    [
        (STAND.format("all cones"), True),
        (STAND.format("all its cones"), False),
        (STAND.format("all cones of that side"), False),
        (STAND.format("its cones"), False),
        (DOWN.format("a cone"), True),
        (DOWN.format("at least 1 cone"), False),
        ("a side has a cone down: everything starts again", False),
    ],
)
def test_a_line_that_earlier_programs_read_otherwise_is_told_with_both_readings(when: str, told: bool) -> None:
    play, stand = "players underarm throw a soft ball at the cones", "soft balls in each half\n  cones on the back line"
    sections = {"space": SPACE, "sides": SIDES, "kit": "2 soft balls\n  2 cones for each side", "when": when}
    lines = {**sections, "set-up": f"{stand} of their side", "play": f"{play} of the other side", "finish": FINISH}
    game = game_in("game Anew\n" + "".join(f"{name}\n  {said}\n" for name, said in lines.items()))
    found = net_of(game, granted(), {"north": 3, "south": 3}).findings
    assert [each.code for each in found if each.code == "N-meant-anew"] == ["N-meant-anew"] * told
