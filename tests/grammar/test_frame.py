"""Steps that say the same several times in a row are told as one; others stand as they are."""

from __future__ import annotations

import pytest

from grammar.finding import Finding, Severity, Step
from grammar.mistakes.shown import framed
from grammar.span import Changed, Span


def shown(*words: str) -> list[str]:
    steps = tuple(Step(each, f"{number} balls") for number, each in enumerate(words))
    finding = Finding("X", Severity.NOTE, "Something.", Span("a.rules", 0, 0, 0), witness=steps)
    lines = list(framed(finding, lambda file, line: None))
    return [line.strip() for line in lines[lines.index("  How it comes about:") + 1 :]]


def test_a_run_is_told_once_with_what_came_of_it() -> None:
    assert shown("the round starts", *["a ball is missed"] * 4, "a ball is fetched") == [
        "0. the round starts",
        "= 0 balls",
        "1 to 4. 4 times a ball is missed",
        "= 4 balls",
        "5. a ball is fetched",
        "= 5 balls",
    ]


@pytest.mark.parametrize("times", [1, 2])
def test_a_short_run_stands_step_by_step(times: int) -> None:
    lines = shown("the round starts", *["a ball is missed"] * times)
    assert [line for line in lines if line.endswith("missed")] == [
        f"{number}. a ball is missed" for number in range(1, times + 1)
    ]


def test_runs_apart_are_told_apart() -> None:
    lines = shown(*["a"] * 3, "b", *["a"] * 3)
    assert [line for line in lines if "=" not in line] == ["0 to 2. 3 times a", "3. b", "4 to 6. 3 times a"]


def test_moves_that_take_turns_are_told_once() -> None:
    lines = shown("the round starts", *["a throws", "b catches"] * 4, "a wins")
    assert lines == [
        "0. the round starts",
        "= 0 balls",
        "1. a throws",
        "= 1 balls",
        "2. b catches",
        "= 2 balls",
        "3 to 8. the last 2 again, 3 times more",
        "= 8 balls",
        "9. a wins",
        "= 9 balls",
    ]


def test_moves_that_take_turns_only_twice_stand_step_by_step() -> None:
    assert not any("again" in line for line in shown(*["a throws", "b catches"] * 2))


def test_a_line_that_was_changed_is_shown_as_it_is_now_with_what_changed_it() -> None:
    by = Span("remix.rules", 3, 3, 30)
    place = Span("a.rules", 5, 3, 37, Changed("court 12 m by 7 m", by))
    finding = Finding("X", Severity.NOTE, "Something.", place)
    texts = {("a.rules", 5): "  court 16 m by 9 m", ("remix.rules", 3): "  make it small"}
    lines = list(framed(finding, lambda file, line: texts[file, line]))
    assert "     5 │   court 12 m by 7 m" in lines and "     3 │   make it small" in lines
    assert not any("16 m by 9 m" in line for line in lines)


@pytest.mark.parametrize(("column", "begins", "ends"), [(3, "  the round", "…"), (150, "…", "win")])
def test_a_line_cut_at_either_end_says_so(column: int, begins: str, ends: str) -> None:
    """And the caret stays under what it marks."""
    text = "  the round ends when there are at most " + "very " * 20 + "few players in, those who are left win"
    place = Span("a.rules", 5, column, column + 5)
    lines = list(framed(Finding("X", Severity.NOTE, "Something.", place), lambda file, line: text))
    [at] = [number for number, line in enumerate(lines) if "5 │" in line]
    said, carets = (line.partition("│ ")[2] for line in lines[at : at + 2])
    assert len(said) == 70 and said.startswith(begins) and said.endswith(ends)
    marked = said[carets.index("^") : len(carets)]
    assert marked == text[column - 1 : column + 4]
