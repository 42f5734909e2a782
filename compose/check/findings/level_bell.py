"""Level at the bell: the clock gives the win to whoever leads in something in which nobody can ever lead.

Then the bell never says who has won. Where nothing else does either, that nobody can win is said instead.
"""

from __future__ import annotations

from compose.check.found import Found
from compose.check.match import can_win
from compose.check.never import why_never
from compose.check.seen import in_play
from compose.check.study import Study
from grammar.finding import Severity
from grammar.said import said

CODE = "C-level-bell"


def level_bell(study: Study) -> list[Found]:
    """At most one finding, at the sentence of the clock."""
    bell = study.net.bell
    if bell is None or study.net.match.halves:
        return []
    leads = [result for result in bell.results if result.winner is not None]
    if not leads or not can_win(study) or any((study.ahead(side) & ~study.ended).any() for side in study.net.sides):
        return []
    why = why_never(in_play(study), leads[0].guard, "what counts before it decides each time")
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title="When the clock stops a round, nobody can ever have won it by then.",
            place=bell.rule.span,
            hint=said(
                '"{end}" never comes: {why}. Count something else then, or say "nobody wins".',
                end=leads[0],
                why=why.told,
            ),
            others=why.lines,
            numbers=(("states", float(study.space.states)),),
        )
    ]
