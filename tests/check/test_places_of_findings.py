"""A finding of the whole game stands at no line, and is not told as if it stood somewhere."""

from __future__ import annotations

from compose.check.explore import TooLarge
from compose.check.findings.limits import too_large, unfinished
from compose.telling.english.findings import findings_told
from grammar.mistakes.shown import framed
from tests.check.cases import one_ball_duel


def test_what_is_of_no_line_is_told_without_a_place() -> None:
    found = (too_large(TooLarge(10**30)), *unfinished(("dead ends",)))
    for finding in findings_told(found, one_ball_duel(balls_must_go_too=False)):
        lines = list(framed(finding, lambda file, line: None))
        assert not any(line.lstrip().startswith("in ") for line in lines), lines
        assert any("→" in line for line in lines)
