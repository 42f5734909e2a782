"""What lies in a store counts when the round is over, not when it is brought: the second reader and the net agree."""

from __future__ import annotations

import pytest

import library
from compose.check.scored import scores
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, net_in

PLAYERS = {"north": 2, "south": 2}
SHEET = """
game Stores
space
  court 18 m by 9 m, in one piece
  store base: 1 m deep, before each back line
  nest circle: 1 m deep, in the middle
sides
  north and south, 2 to 14 players each, mirrored
kit
  2 nuts, like a marker dome
  1 shell, like a beanbag
set-up
  nuts in the middle
  shell in the middle
play
  players take a nut or a shell from the middle to their store base
  players take a nut or a shell from the store base of the other side to their store base{when_it_may_be}
  players touch players of the other side who carry a nut
when
  a player who carries a nut is touched: {falls}
  {when}
finish
  {finish}
"""
USUAL = {"when_it_may_be": "", "falls": "the nut goes back", "when": "a shell arrives: play goes on"}
COUNTED = "at the end nuts in the store base score 1 and shells 2 points\n  after 4 min: "
CASES = {
    "things of one kind": {"finish": "after 4 min: more nuts in the store base wins, else more shells wins"},
    "where they are brought": {"finish": "a side wins when it has 2 nuts\n  after 4 min: more nuts wins, else a draw"},
    "several kinds": {"finish": f"{COUNTED}more points wins, else a draw"},
    "fewer": {"finish": f"{COUNTED}fewer points wins, else a draw"},
    "besides what was scored": {
        "finish": f"{COUNTED}more points wins, else a draw",
        "when": "the first time, a shell arrives: the carrier's side scores 1 point",
    },
    "for one side": {
        "falls": "the nut goes to the nest circle",
        "finish": "at the end nuts in the nest circle score 2 points for south\n  " + COUNTED + "more points wins",
    },
    "once all is taken": {
        "when_it_may_be": ", only when there are no nuts in the middle",
        "finish": "at the end each nut is worth 1 point\n  "
        "the round ends when there are no nuts in the middle, more points wins",
    },
    "once nothing is left": {
        "when_it_may_be": ", only when there are no things in the middle",
        "finish": "at the end each thing in the store is worth 1 point\n  a side wins when it has all things in its "
        "store\n  the round ends when there are no things in the middle, more points wins",
    },
    "whatever it is": {
        "when": "a thing arrives: the carrier's side scores 1 point",
        "finish": "the first side to 3 points wins\n  after 4 min: more things wins",
    },
    "who is in": {"finish": "at the end each player in is worth 3 points\n  after 4 min: more points wins"},
}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_both_readers_agree(case: dict[str, str]) -> None:
    ours, theirs = read_by_both(game_in(SHEET.format(**{**USUAL, **case})), PLAYERS)
    assert ours == theirs


def test_what_lies_with_one_side_counts_for_that_side_alone() -> None:
    """The only store is north's: both readers give south nothing for what lies there."""
    sheet = SHEET.format(**{**USUAL, "finish": f"{COUNTED}more points wins, else a draw"})
    sheet = sheet.replace("before each back line", "before the back line of north").replace(
        "  players take a nut or a shell from the middle", "  players of north take a nut or a shell from the middle"
    )
    lines = [line for line in sheet.splitlines() if "of the other side to their store" not in line]
    game = game_in(
        "\n".join(lines).replace("players touch players of the other side", "players of south touch players of north")
    )
    ours, theirs = read_by_both(game, PLAYERS)
    assert ours == theirs
    assert [side for side, terms in scores(net_in(game, PLAYERS)) if terms] == ["north"]


def test_no_points_are_given_on_the_way() -> None:
    """The score is what lies there in the end, so that a thief takes what it is worth."""
    net = net_in(game_in(SHEET.format(**{**USUAL, "finish": f"{COUNTED}more points wins"})), PLAYERS)
    worth = {place.kind: each for _, terms in scores(net) for each, number in terms for place in [net.places[number]]}
    assert worth == {"nut": 1, "shell": 2}
    assert not any(place.token == "points" for place in net.places)


def test_what_counts_there_may_stay_there() -> None:
    """Nobody takes a nut out of the nest circle again: it is stranded unless it counts there."""
    nests = []
    for finish in (CASES["for one side"]["finish"], "after 4 min: more nuts wins"):
        case = {"falls": "the nut goes to the nest circle", "finish": finish}
        places = net_in(game_in(SHEET.format(**{**USUAL, **case})), PLAYERS).places
        nests += [place.final for place in places if place.name == "load/nut/nest circle/-"]
    assert nests == [True, False]


REFUSED = {
    "nobody asks": "at the end nuts score 1 point\n  after 4 min: more nuts wins",
    "said twice": "at the end nuts score 1 point\n  at the end things score 2 points\n  after 4 min: more points wins",
    "of all alike": "at the end nuts in the middle score 1 point\n  after 4 min: more points wins",
    "for any side": "at the end nuts in the middle score 1 point for a side\n  after 4 min: more points wins",
    "the next point": "at the end nuts score 1 point\n  after 4 min: more points wins, else the next point wins",
    "points of points": "at the end points score 2 points\n  after 4 min: more points wins",
    "nothing": "at the end nuts score 0 points\n  after 4 min: more points wins",
    "points before it": "at the end nuts score 1 point\n  the first side to 3 points wins",
}


CAUGHT = """
game Caught
space
  court 16 m by 12 m, in one piece
  pen bench: along a side line
sides
  wolves, 2 to 6 players
  hares, 2 to 6 players
play
  wolves touch hares
  hares free frozen hares
when
  a hare is touched: that player {goes}
finish
  at the end {counted} score 1 point{whose}
  after 4 min: more points wins, else a draw
"""


@pytest.mark.parametrize(
    ("goes", "counted", "whose", "worth"),
    [
        ("freezes", "frozen players", " for wolves", {"wolves": "frozen"}),
        ("freezes", "frozen hares", " for wolves", {"wolves": "frozen"}),
        ("goes to the pen bench", "players on the pen bench", " for wolves", {"wolves": "pen bench"}),
        ("goes to the pen bench", "hares on the pen bench", " for wolves", {"wolves": "pen bench"}),
        ("is out", "hares out", " for wolves", {"wolves": "out"}),
        ("is out", "players in", " for hares", {"hares": "in"}),
        ("freezes", "frozen players", "", {"hares": "frozen"}),
    ],
)
def test_who_is_caught_counts_for_whoever_caught_them(
    goes: str, counted: str, whose: str, worth: dict[str, str]
) -> None:
    """In both readers: hares alone can be caught, so that what counts for wolves are hares."""
    frees = goes == "freezes"
    text = CAUGHT.format(goes=goes, counted=counted, whose=whose)
    game = game_in(text if frees else text.replace("  hares free frozen hares\n", ""))
    players = {"wolves": 2, "hares": 2}
    ours, theirs = read_by_both(game, players)
    assert ours == theirs
    net = net_in(game, players)
    reached = {
        side: {net.places[place].name for _, place in terms if net.places[place].side == "hares"}
        for side, terms in scores(net)
    }
    assert {side for side, names in reached.items() if names} == set(worth)
    assert all(word in name for side, word in worth.items() for name in reached[side])


def test_for_whom_they_count_is_asked_and_what_is_offered_says_it() -> None:
    text = CAUGHT.format(goes="freezes", counted="frozen hares", whose="").lstrip("\n")
    parsed = parse(text, "(test)")
    assert parsed.value is not None
    (found,) = resolve(parsed.value.games[0], library.kit_categories()).findings
    offered = "at the end frozen hares score 1 point for wolves"
    assert offered in found.hint
    game_in(text.replace("at the end frozen hares score 1 point", offered))


@pytest.mark.parametrize("case", REFUSED)
def test_what_means_nothing_is_refused(case: str) -> None:
    parsed = parse(SHEET.format(**{**USUAL, "finish": REFUSED[case]}).lstrip("\n"), "(test)")
    assert parsed.value is not None
    findings = resolve(parsed.value.games[0], library.kit_categories()).findings
    assert findings and all(finding.hint for finding in findings)


def test_of_a_place_that_lies_nowhere_only_its_own_line_is_told() -> None:
    ends = "the round ends when there are no nuts in the nest circle, nobody wins"
    text = SHEET.format(**{**USUAL, "finish": ends}).replace("1 m deep, in the middle", "1 m deep, in the side line")
    parsed = parse(text.lstrip("\n"), "(test)")
    assert parsed.value is not None
    (found,) = resolve(parsed.value.games[0], library.kit_categories()).findings
    assert found.title == "There is more than one side line."


STANDING = """
game Still Up
space
  court 18 m by 9 m, halved across
  far bench: behind the back line of north
sides
  north and south, 2 to 14 players each
kit
  1 soft ball, like a foam ball
  2 cones for each side
set-up
  soft ball in the half of south
  cones on the back line of their side
play
  players roll a soft ball at the cones of the other side
when
  a cone is knocked: it stays down
  {when}
finish
  at the end {counted} 1 point
  after 4 min: more points wins, else a draw
"""


@pytest.mark.parametrize(("counted", "when", "whose"), [
    ("cones standing score", "a ball is caught: play goes on", {"north", "south"}),
    ("players on the far bench score", "a ball is caught: the thrower goes to the far bench of north", {"north"}),
])  # fmt: skip
def test_what_stands_and_who_sits_somewhere_counts_for_whoever_has_it(counted: str, when: str, whose: set[str]) -> None:
    game = game_in(STANDING.format(counted=counted, when=when))
    ours, theirs = read_by_both(game, PLAYERS)
    assert ours == theirs
    assert {side for side, terms in scores(net_in(game, PLAYERS)) if terms} == whose
