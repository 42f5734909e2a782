"""A text as the program judges it: all its mistakes, with their advice."""

from __future__ import annotations

from collections.abc import Callable

from compose.terminal.typed.finding_games import meaning_of_others
from grammar.finding import Finding, Severity
from grammar.mistakes.proofread import proofread
from library import kit_categories


def judge_of(file: str) -> Callable[[str], tuple[Finding, ...]]:
    """What finds the mistakes of a text that is called like that file."""

    def judge(text: str) -> tuple[Finding, ...]:
        found = proofread(text.encode("utf-8", "surrogatepass"), file, kit_categories(), meaning_of_others)
        return tuple(finding for finding in found if finding.severity is Severity.ERROR)

    return judge
