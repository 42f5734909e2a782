"""Over before it starts: an end already holds at the set-up, so nobody ever plays."""

from __future__ import annotations

from compose.check.found import Found
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import said

CODE = "C-started-over"


def started_over(study: Study) -> list[Found]:
    """At most one finding, at the end that holds."""
    number = int(study.space.end_of[0])
    if number < 0:
        return []
    end = study.net.ends[number]
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said('The round is over before it starts: "{end}" is true at the set-up.', end=end),
            place=end.rule.span,
            hint="Change the set-up so that it is not yet true, or change this finish.",
            witness=line_of_play(study.space, 0),
        )
    ]
