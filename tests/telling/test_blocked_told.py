"""What is blocked and caught is told of what can be: a pass to a team-mate meets no keeper of a gate."""

from __future__ import annotations

from told_games import POSSESSION
from told_sheets import told

GATES = (
    POSSESSION.replace("kit\n", "  role keeper: 1 player of each side\nkit\n")
    .replace("set-up\n", "  1 gate for each side, like a hanging hoop\nset-up\n")
    .replace("set-up\n", "set-up\n  gate before the back line of their side\n")
    .replace("when\n", "  a keeper stands before each gate with the hands\n"
             "  players underarm throw a foam ball through the gate of the other side\nwhen\n"
             "  a ball is blocked: the ball stays with the keeper\n"
             "  a pass is intercepted: the ball goes to the other side\n")
)  # fmt: skip


def test_only_shots_are_blocked_and_only_passes_are_caught() -> None:
    said = told(GATES)
    assert "is blocked, the ball goes to the keeper of the other side." in said
    assert "A blocked foam ball" not in said and "A caught foam ball" not in said
