"""Several rounds that are counted, and that nobody can win: no sentence says who has won one, so that none is ahead."""

from __future__ import annotations

from compose.check.found import Found
from compose.check.match import decides
from compose.check.study import Study
from grammar.core.ends import Meeting
from grammar.finding import Severity
from grammar.said import Chain, said

CODE = "C-best-of-nothing"


def best_of_nothing(study: Study) -> list[Found]:
    """At most one finding, at the sentence that asks for several rounds."""
    match = study.net.match
    counted = match.best_of > 1 or match.of_rounds or match.meeting not in (None, Meeting.ALL_MEET_ALL)
    if not counted or decides(study.net):
        return []
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said(
                '"{lines}": nobody can ever win a round, so that nobody is ever ahead.', lines=Chain(match.lines, "; ")
            ),
            place=match.place,
            hint='Say how a side wins a round, such as "a side wins when ...", or leave this line out.',
        )
    ]
