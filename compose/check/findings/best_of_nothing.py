"""Best of several rounds that nobody can win: no sentence ever says who has won one, so that none is ever ahead."""

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
    if (match.best_of == 1 and match.meeting in (None, Meeting.ALL_MEET_ALL)) or decides(study.net):
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
