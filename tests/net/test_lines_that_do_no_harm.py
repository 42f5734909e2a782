"""A line that says what holds anyway is no thing to mend: whoever takes it out has the same play."""

from __future__ import annotations

import pytest
from sheet_pieces import net

from grammar.finding import Severity
from tests.check.cases import told

AT_CONES = "players roll a soft ball at the cones of the other side"
DOWN = "a cone is knocked: it stays down"


@pytest.mark.parametrize(
    ("play", "when", "severity"),
    [
        ("players fetch balls from their half", "", Severity.NOTE),
        ("players fetch balls from their half, only 1 player at a time", "", Severity.NOTE),
        ("", "a player is hit: play goes on", Severity.NOTE),
        ("", "a player is hit: the thrower's side scores 1 point", Severity.WARNING),
        ("", "a cone is knocked by its own side: the other side scores 1 point", Severity.NOTE),
    ],
)
def test_only_what_the_teacher_waits_for_is_to_be_mended(play: str, when: str, severity: Severity) -> None:
    more = net(f"{DOWN}\n  {when}" if when else DOWN, f"{AT_CONES}\n  {play}" if play else AT_CONES)
    (idle,) = [finding for finding in told(more) if finding.code == "C-idle"]
    assert idle.severity is severity
    if severity is Severity.NOTE:
        assert "It does no harm" in idle.hint
        assert [each.told for each in more.transitions] == [each.told for each in net(DOWN, AT_CONES).transitions]


def test_what_is_fetched_from_elsewhere_is_waited_for() -> None:
    behind = "the teacher fetches balls from behind the back line, 2 times a minute"
    (idle,) = [finding for finding in told(net(DOWN, f"{AT_CONES}\n  {behind}")) if finding.code == "C-idle"]
    assert "There are never any" in idle.hint


@pytest.mark.parametrize(
    ("stays", "severity"), [("it stays down", Severity.NOTE), ("north scores 1 point", Severity.WARNING)]
)
def test_that_a_thing_stays_down_is_said_of_all_of_its_kind(stays: str, severity: Severity) -> None:
    """Also of those at which nobody aims."""
    at_south = "players of north roll a soft ball at the cones of south"
    more = net(f"a cone of south is knocked: it stays down\n  a cone of north is knocked: {stays}", at_south)
    (idle,) = [finding for finding in told(more) if finding.code == "C-idle"]
    assert idle.severity is severity
