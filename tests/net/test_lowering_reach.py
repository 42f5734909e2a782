"""What cannot come off is left out of the net, and told: balls that roll below what hangs, balls not fit for it."""

from __future__ import annotations

import pytest
from sheet_pieces import SPACE, net

from compose.check import check
from compose.net.from_game import net_of
from grammar.finding import Finding, Severity
from tests.interpreter.sheets import game_in, granted

SHEET = """
game Reach
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 6 players each
kit
  4 soft balls, like a {ball}
  2 marks for each side, like a {target}
  1 ring for each side, like a {ring}
set-up
  2 soft balls in each half
  marks on the back line of their side
  ring behind the back line of their side
play
  players {skill} a soft ball at the marks of the other side
  players {skill} a soft ball through the ring of the other side
when
  a mark is knocked: it stays down
  a ball goes through the ring: the thrower's side wins
finish
  a side wins when the other side has no marks standing
"""


def told(skill: str, ball: str = "foam ball", target: str = "cone", ring: str = "hoop") -> list[Finding]:
    """The warnings of the sheet; each points at a line of its play."""
    text = SHEET.format(skill=skill, ball=ball, target=target, ring=ring)
    outcome = net_of(game_in(text), granted(), {"north": 2, "south": 2})
    assert outcome.value is not None
    lines = text.lstrip().splitlines()
    assert all(lines[each.place.line - 1].startswith(f"  players {skill}") for each in outcome.findings)
    assert all(each.severity is Severity.WARNING for each in outcome.findings)
    return list(outcome.findings)


@pytest.mark.parametrize("skill", ["roll", "underarm throw", "kick"])
def test_what_stands_on_the_floor_is_reached(skill: str) -> None:
    assert told(skill) == []


@pytest.mark.parametrize(("target", "high"), [("bell", "1.2 m"), ("tin", "0.6 m"), ("wall target", None)])
def test_a_rolled_ball_stays_below_what_hangs(target: str, high: str | None) -> None:
    [finding] = told("roll", target=target)
    assert finding.code == "N-too-high" and "cannot reach a mark" in finding.title
    assert high is None or high in finding.title
    assert dict(finding.numbers)["metres above the floor"] > 0.2
    assert told("underarm throw", target=target) == []


@pytest.mark.parametrize("ring", ["hanging hoop", "ring", "basketball ring"])
def test_a_rolled_ball_goes_through_no_ring_that_hangs(ring: str) -> None:
    [finding] = told("roll", ring=ring)
    assert finding.code == "N-too-high" and "cannot go through a ring" in finding.title
    assert told("kick", ring=ring) == []


def test_a_low_thing_is_met_by_a_higher_ball() -> None:
    """A ball on a cone lies 0.3 m above the floor: a foam ball rolls below it, a beach ball does not."""
    assert [each.code for each in told("roll", target="propped ball")] == ["N-too-high"]
    game = game_in(SHEET.format(skill="roll", ball="beach ball", target="propped ball", ring="hoop"))
    codes = [each.code for each in net_of(game, granted(), {"north": 2, "south": 2}).findings]
    assert "N-too-high" not in codes


def test_what_cannot_come_off_is_not_in_the_net() -> None:
    """A side whose only target hangs too high can never win, and the check proves it."""
    kit = "2 soft balls, like a foam ball\n  2 cones for each side, like a bell"
    of = net(play="players roll a soft ball at the cones of the other side", kit=kit, space=SPACE)
    assert {each.outcome for each in of.transitions if each.attempt.aim == "target"} == {"missed"}
    assert "C-no-end" in {each.code for each in check(of).findings}


@pytest.mark.parametrize(
    ("ball", "skill", "words"),
    [
        ("beanbag", "kick", "A beanbag is not fit to be kicked."),
        ("balloon", "roll", "A balloon is not fit to be rolled."),
    ],
)
def test_a_ball_that_is_not_fit_for_it(ball: str, skill: str, words: str) -> None:
    found = [each for each in told(skill, ball=ball) if each.code == "N-unfit"]
    assert [each.title for each in found] == [words, words]


@pytest.mark.parametrize(("ball", "hard"), [("foam ball", False), ("handball", True), ("tennis ball", True)])
def test_hard_balls_are_not_aimed_at_people(ball: str, hard: bool) -> None:
    text = SHEET.format(skill="overarm throw", ball=ball, target="cone", ring="hoop")
    aimed = text.replace("at the marks of the other side", "at the players of the other side")
    for sheet, told_of in ((text, False), (aimed, hard)):
        found = net_of(game_in(sheet), granted(), {"north": 2, "south": 2}).findings
        assert any(each.code == "N-hard-ball" for each in found) is told_of


def test_a_hard_ball_beside_a_soft_one_is_told_apart() -> None:
    """Only the ball that is aimed at people has to be soft."""
    text = SHEET.format(skill="overarm throw", ball="foam ball", target="cone", ring="hoop")
    text = text.replace("kit\n", "kit\n  1 hard ball, like a handball\n", 1)
    text = text.replace("set-up\n", "set-up\n  1 hard ball in the middle\n", 1)
    text = text.replace("a soft ball through the ring", "a hard ball through the ring")
    text = text.replace("at the marks of the other side", "at the players of the other side")
    found = net_of(game_in(text), granted(), {"north": 2, "south": 2}).findings
    assert "N-hard-ball" not in {each.code for each in found}
