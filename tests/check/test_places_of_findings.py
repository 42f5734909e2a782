"""A finding of the whole game stands at no line, and is not told as if it stood somewhere."""

from __future__ import annotations

from compose.check.explore import TooLarge
from compose.check.findings.limits import too_large, unfinished
from grammar.frame import framed


def test_what_is_of_no_line_is_told_without_a_place() -> None:
    for finding in (too_large(TooLarge(10**30)), *unfinished(("dead ends",))):
        lines = list(framed(finding, lambda file, line: None))
        assert not any(line.lstrip().startswith("in ") for line in lines), lines
        assert any("→" in line for line in lines)
