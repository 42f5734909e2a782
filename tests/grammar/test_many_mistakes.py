"""Sheets with about a hundred mistakes: told in time, and what is offered for the first of them holds.

What is counted are lines that are resolved, not seconds, so that it is the same on every machine. How long each kind
of sheet takes, `python -m tests.benchmarks.hundred_mistakes` says.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from advised import advices, helps
from many_mistakes import SHEETS, slips

from grammar.finding import Finding, Severity
from grammar.mistakes.first_ones import MOST_ADVISED, MOST_RESOLVED_LINES, advised
from grammar.mistakes.proofread import mistakes, proofread
from grammar.parse import read
from library import kit_categories

OVERRUN = 3_000  # the last mistake that is begun, and the proof on the whole sheet: our choice
FEWER, SLIPS_MENDED = 30, 6


def all_of(text: str) -> tuple[Finding, ...]:
    """What is wrong with a text, without advice."""
    return mistakes(read(text, "many.rules"), kit_categories())


def told(text: str) -> tuple[Finding, ...]:
    return proofread(text.encode(), "many.rules", kit_categories())


@pytest.mark.parametrize("kind", SHEETS)
def test_few_lines_are_resolved_for_advice(kind: str) -> None:
    resolved = 0

    def counted(text: str, weighed: bool) -> Sequence[Finding]:
        nonlocal resolved
        resolved += (1 + weighed) * sum(bool(line.strip()) for line in text.split("\n"))
        return mistakes(read(text, "many.rules"), kit_categories(), weighed=weighed)

    found = advised(SHEETS[kind](), lambda text: counted(text, True), lambda text: counted(text, False))
    assert len(found) > MOST_ADVISED
    assert resolved < MOST_RESOLVED_LINES + OVERRUN


@pytest.mark.sample(4)
@pytest.mark.parametrize("kind", SHEETS)
def test_what_is_offered_mends_and_the_note_says_where_it_ends(kind: str) -> None:
    text = SHEETS[kind](FEWER)
    before, found = all_of(text), told(text)
    assert [each.severity for each in found if each.code == "L-later"] == [Severity.NOTE]
    note = [each.code for each in found].index("L-later")
    assert not any(each.corrections for each in found[note:])
    for advice in advices(text, found):
        assert helps(advice, before, all_of), (advice.finding.place.line, advice.line)


def test_the_first_slips_are_answered_though_there_are_a_hundred() -> None:
    found = told(slips())
    assert sum(bool(each.corrections) for each in found[:MOST_ADVISED]) >= SLIPS_MENDED


def test_no_note_stands_below_few_mistakes() -> None:
    found = told(slips(MOST_ADVISED // 2))
    assert found
    assert all(each.code != "L-later" for each in found)
