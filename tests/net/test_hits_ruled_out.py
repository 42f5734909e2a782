"""Which hits a line about bounces is about: all of them, or those of whom and of what it names."""

from __future__ import annotations

import pytest
from proofreading import judge_of

from grammar.finding import Finding
from tests.outside.whole_way import Played

SHEET = """
game Rugs
space
  court 18 m by 9 m, halved across
sides
  north and south, 4 to 6 players each, mirrored
  role keeper: 1 player of each side
kit
  4 foam balls
  1 rug for each side, like a thick mat
  1 gate for each side, like a hanging hoop
set-up
  rug on the back line of their side
  gate behind the back line of their side
  2 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the rug or the players of the other side
  players overarm throw a foam ball through the gate of the other side
  {play}
when
  a rug is knocked: the thrower's side scores 1 point
  {when}
finish
  after 6 min: more points wins, else a draw
"""
OUT = "a keeper is hit: that player is out"
FREE = '"Nobody shouts."'
KINDS = ("rug", "gate", "player")


def mistakes(play: str, when: str) -> list[Finding]:
    """What is told of the sheet with these lines."""
    return list(judge_of("sheet.rules")(SHEET.lstrip().format(play=play, when=when)))


def ruled_out(*play: str) -> dict[str, set[tuple[str, ...]]]:
    """By what each kind of aim may not come."""
    text = SHEET.format(play="\n  ".join(play), when=OUT)
    aims = {"target": "rug", "ring": "gate", "player": "player"}
    found: dict[str, set[tuple[str, ...]]] = {kind: set() for kind in KINDS}
    for move in Played(text, {"north": 4, "south": 4}).net.transitions:
        if move.outcome == "success":
            found[aims[move.attempt.aim]].add(move.attempt.ruled_out)
    return found


@pytest.mark.parametrize(("way", "norm"), [("after a bounce", "floor"), ("off the wall", "wall")])
@pytest.mark.parametrize("named", KINDS)
def test_a_line_about_some_leaves_the_others_alone(named: str, way: str, norm: str) -> None:
    narrow, free = ruled_out(f"a {named} hit {way} does not count"), ruled_out(FREE)
    assert narrow[named] == {(norm,)}
    assert all(narrow[other] == free[other] == {()} for other in KINDS if other != named)


@pytest.mark.parametrize("way", ["after a bounce", "off the wall", "after a bounce or off the wall"])
def test_lines_about_each_are_the_line_about_all(way: str) -> None:
    assert ruled_out(*(f"a {kind} hit {way} does not count" for kind in KINDS)) == ruled_out(
        f"a hit {way} does not count"
    )


def test_players_of_one_role_are_some_of_the_players() -> None:
    assert ruled_out("a keeper hit after a bounce does not count")["player"] == {("floor",), ()}


@pytest.mark.parametrize("play", [
    "a teacher hit after a bounce does not count", "a foam ball hit after a bounce does not count",
    "a player of the other side hit after a bounce does not count",
])  # fmt: skip
def test_whom_nobody_aims_at_is_refused(play: str) -> None:
    assert [each.code for each in mistakes(play, OUT)] in (["G-sense"], ["G-sort"])


@pytest.mark.parametrize(("event", "line"), [
    ("a player is hit", "a player hit after a bounce does not count"),
    ("a keeper is hit", "a keeper hit after a bounce does not count"),
    ("a rug is knocked", "a rug hit after a bounce does not count"),
    ("a ball goes through a gate", "a gate hit after a bounce does not count"),
])  # fmt: skip
def test_where_play_would_just_go_on_the_line_about_these_is_named(event: str, line: str) -> None:
    (finding,) = mistakes(FREE, f"{event} after a bounce: play goes on")
    assert finding.hint == f"Write in play: {line}"
    assert not mistakes(line, OUT)


@pytest.mark.parametrize(("parts", "lowest"), [(("shoulder",), "shoulder"), (("hip", "knee", "shoulder"), "knee")])
def test_below_which_part_of_the_body_it_counts_is_asked_of_balls_and_of_no_touch(
    parts: tuple[str, ...], lowest: str
) -> None:
    said = (f"a hit above the {part} does not count" for part in parts)
    play = ("players touch players of the other side", *said)
    text = SHEET.replace("  players stay in their half\n", "").replace("halved across", "in one piece")
    text = text.replace("2 foam balls in each half", "foam balls in the middle")
    text = text.format(play="\n  ".join(play), when=f"{OUT}\n  a player is touched: that player is out")
    moves = Played(text, {"north": 4, "south": 4}).net.transitions
    at_players = [move.attempt for move in moves if move.attempt.aim == "player"]
    assert {each.ball is not None for each in at_players} == {True, False}
    for each in at_players:
        assert each.below == (lowest if each.ball is not None else None)
