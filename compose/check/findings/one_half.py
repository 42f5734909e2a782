"""One half that a side cannot win, in a game of two halves that its group can: worth knowing, nothing to mend."""

from __future__ import annotations

from compose.check.match import can_win
from compose.check.study import Study
from compose.check.words import sentence, subject
from grammar.finding import Basis, Finding, Severity

CODE = "C-half"


def one_half(study: Study) -> list[Finding]:
    """One finding for each such side; silent where nobody is said to win a half."""
    if not study.net.match.halves or not study.contested or not can_win(study):
        return []
    return [_finding(study, side) for side in study.net.sides if not study.won(side).any()]


def _finding(study: Study, side: str) -> Finding:
    change = study.net.match.tasks_change
    whole = "each group plays either side" if change else "the points count together"
    return Finding(
        code=CODE,
        severity=Severity.NOTE,
        title=sentence(f"{subject(side)} can never win {study.net.match.part} by itself."),
        place=study.net.match.place,
        hint=f"Over {study.net.match.all_parts} {whole}.",
        basis=Basis.PROVED,
    )
