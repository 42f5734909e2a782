"""A finding in words for a terminal: what is wrong, the line with a caret, what would mend it."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Callable, Iterator
from itertools import groupby

from grammar.finding import Basis, Finding, Severity, Step
from grammar.span import Span

WIDTH = 80
TOO_MANY = 3  # steps in a row that say the same, from which on they are told as one
UNSEEN = "�"
_LABEL = {Severity.ERROR: "mistake", Severity.WARNING: "to mend", Severity.NOTE: "to know"}
SourceLine = Callable[[str, int], str | None]


def framed(finding: Finding, source_line: SourceLine, width: int = WIDTH) -> Iterator[str]:
    """Lines of at most `width` letters; the source line itself is cut where it is longer."""
    basis = "" if finding.basis is Basis.READ else f" ({finding.basis.value})"
    yield from _wrapped(f"{_LABEL[finding.severity]}{basis} {finding.code}: {finding.title}", "", width)
    for place in (finding.place, *finding.others):
        yield from _shown(place, source_line, width)
    if finding.witness:
        yield "  How it comes about:"
        yield from _steps(finding.witness, width)
    if finding.loop:
        yield "  And then round and round:"
        yield from _steps(finding.loop, width)
    if finding.hint:
        yield from _wrapped(finding.hint, "  → ", width)


def _shown(place: Span, source_line: SourceLine, width: int) -> Iterator[str]:
    if not place.line:
        yield from _wrapped(f"in {place.file}", "  ", width)
        return
    yield from _wrapped(f"{place.file}, line {place.line}, column {place.column}", "  ", width)
    text = source_line(place.file, place.line)
    if text is None:
        return
    room = width - 10
    text = "".join(letter if _can_be_seen(letter) else UNSEEN for letter in text.expandtabs(4).rstrip())
    start = max(0, min(place.column - 1 - room // 2, len(text) - room)) if len(text) > room else 0
    yield f"  {place.line:>4} │ {text[start : start + room]}"
    caret = place.column - 1 - start
    length = max(1, min(place.end - place.column, room - caret))
    before, marked = text[start : start + caret], text[start + caret : start + caret + length]
    yield f"       │ {' ' * _width(before, caret)}{'^' * _width(marked, length)}"


def _can_be_seen(letter: str) -> bool:
    """False for letters that would steer the terminal, or turn the line round."""
    return unicodedata.category(letter) not in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")


def _width(text: str, letters: int) -> int:
    """Columns that so many letters take on a terminal: two for wide ones, none for marks on others."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    marks = sum(unicodedata.combining(letter) > 0 for letter in text)
    return letters + wide - marks


def _steps(steps: tuple[Step, ...], width: int) -> Iterator[str]:
    """The steps, numbered; the same one several times in a row is told once, with what came of it in the end."""
    number = 0
    for words, run in groupby(steps, lambda step: step.words):
        alike = list(run)
        shown, each = (alike[-1:], len(alike)) if len(alike) >= TOO_MANY else (alike, 1)
        for step in shown:
            last = number + each - 1
            lead = f"  {number:>3}. " if each == 1 else f"  {number:>3} to {last}. "
            yield from _wrapped(words if each == 1 else f"{each} times {words}", lead, width)
            if step.after:
                yield from _wrapped(step.after, "       = ", width)
            number = last + 1


def _wrapped(text: str, lead: str, width: int) -> list[str]:
    hang = " " * len(lead)
    return textwrap.wrap(text, width, initial_indent=lead, subsequent_indent=hang, break_on_hyphens=False)
