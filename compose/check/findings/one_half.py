"""One half, innings or round that a side cannot win, though it can win the game: worth knowing, nothing to mend."""

from __future__ import annotations

from compose.check.found import Found, Sides
from compose.check.match import can_win
from compose.check.study import Study
from grammar.finding import Severity
from grammar.said import said

CODE = "C-half"


def one_half(study: Study) -> list[Found]:
    """One finding for each such side; silent where nobody is said to win a half."""
    if not study.net.match.halves or not study.contested or not can_win(study):
        return []
    return [_finding(study, side) for side in study.net.sides if not study.won(side).any()]


def _finding(study: Study, side: str) -> Found:
    change = study.net.match.tasks_change
    parts = {"half": "both halves", "innings": "all innings", "round": "all rounds"}[study.net.match.part]
    whole = "each group plays either side" if change else "the points count together"
    return Found(
        code=CODE,
        severity=Severity.NOTE,
        title=said("{side} can never win {part} by itself.", side=Sides(side), part=study.net.match),
        place=study.net.match.place,
        hint=said("Over {parts} {whole}.", parts=parts, whole=whole),
    )
