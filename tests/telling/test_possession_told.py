"""Who has the ball on a court in one piece, as it is read back: the side, not the person, keeps what it passes."""

from __future__ import annotations

import pytest
from told_games import POSSESSION
from told_sheets import told

from compose.telling.wording import wording_of

INTERCEPTED = "  a pass is intercepted: the ball goes to the other side\nfinish\n"


def test_a_pass_stays_with_the_side_and_a_catch_does_not() -> None:
    said = told(POSSESSION)
    assert "A passed foam ball stays with the side of whoever sent it." in said
    assert "A caught foam ball goes to the other side." in said
    assert "reste chez l’équipe qui l’envoie" in told(POSSESSION, wording_of("fr"))


def test_what_a_rule_settles_is_not_taken_for_granted_too() -> None:
    said = told(POSSESSION.replace("finish\n", INTERCEPTED))
    assert "is caught by the other side (pass), the ball goes to the other side." in said
    assert "A caught foam ball" not in said


@pytest.mark.parametrize("guard", ["while it has at least 1 point", "while the other side has at least 1 point"])
def test_what_a_rule_settles_only_sometimes_is_told_of_the_rest(guard: str) -> None:
    said = told(POSSESSION.replace("finish\n", INTERCEPTED.replace(":", f" {guard}:")))
    assert "A caught foam ball goes to the other side." in said
