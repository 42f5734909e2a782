"""What no line says is told back: what starts a row anew, and whose a ball is for which both sides run."""

from __future__ import annotations

from told_games import POSSESSION
from told_sheets import told

RUN_FOR = POSSESSION.replace("when\n", "  whoever is first at a loose ball has it\nwhen\n")
ASKED = "players pass a foam ball to a team-mate, only after 3 passes in a row"
ANEW = "A count in a row starts at 0 again with a miss, with a ball that the other side catches or stops"
ASKED_ANEW = "What is allowed only after a row asks for a new one after each try of it,"


def test_what_starts_a_row_anew_and_who_has_a_loose_ball() -> None:
    said = told(RUN_FOR)
    assert ANEW in said
    assert "The players of each side fetch foam balls from the court; whoever is first there has it." in said
    assert ASKED_ANEW not in said


def test_what_asks_for_a_row() -> None:
    assert ASKED_ANEW in told(POSSESSION.replace("when\n", f"  {ASKED}\nwhen\n"))


def test_nothing_of_rows_where_there_are_none() -> None:
    said = told(POSSESSION.replace("4 passes in a row", "a pass is intercepted").replace("passer's", "catcher's"))
    assert ANEW not in said
