"""A finding in words for a terminal: what is wrong, the line with a caret, what would mend it."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Callable, Iterator

from grammar.finding import NOT_PROVED, Basis, Finding, Severity, Step
from grammar.span import Span

WIDTH = 80
TOO_MANY = 3  # times that steps come over and over, from which on they are told once
LONGEST_RUN = 4  # so many steps may take turns
UNSEEN = "�"
LABELS = {Severity.ERROR: "mistake", Severity.WARNING: "to mend", Severity.NOTE: "to know"}
SourceLine = Callable[[str, int], str | None]
Say = Callable[..., str]  # a pattern and what stands in its fields, in the words of a language


def in_english(pattern: str, **fields: object) -> str:
    """The pattern as it is, filled in."""
    return pattern.format(**fields)


def framed(finding: Finding, source_line: SourceLine, width: int = WIDTH, say: Say = in_english) -> Iterator[str]:
    """Lines of at most `width` letters; a longer source line is cut, with … for what is left out."""
    yield from headed(finding, width, say)
    for place in (finding.place, *finding.others):
        yield from _shown(place, source_line, width, say)
    if finding.witness:
        yield f"  {say('How it comes about:')}"
        yield from _steps(finding.witness, width, say)
    if finding.loop:
        yield f"  {say('And then round and round:')}"
        yield from _steps(finding.loop, width, say)
    if finding.hint:
        yield from _wrapped(finding.hint, "  → ", width)


def label_of(finding: Finding) -> str:
    """What a finding is: a mistake, to mend, to know, or that not all is proved."""
    return "not proved" if finding.code in NOT_PROVED else LABELS[finding.severity]


def headed(finding: Finding, width: int = WIDTH, say: Say = in_english) -> list[str]:
    """What is found, in words first; the code of a mistake leads to what the language page says of it."""
    label = say(label_of(finding))
    basis = () if finding.basis is Basis.READ else (say(finding.basis.value),)
    if finding.severity is Severity.ERROR:
        known = f" ({basis[0]})" if basis else ""
        return _wrapped(f"{label}{known} {finding.code}{say(':')} {finding.title}", "", width)
    return _wrapped(f"{label}{say(':')} {finding.title} [{', '.join((finding.code, *basis))}]", "", width)


def _shown(place: Span, source_line: SourceLine, width: int, say: Say) -> Iterator[str]:
    if not place.line:
        yield from _wrapped(say("in {file}", file=place.file), "  ", width) if place.file else ()
        return
    if place.changed is not None:
        now = " " * (place.column - 1) + place.changed.words
        pattern = "{file}, line {line}, column {column}, where it now says"
        yield from _framed_line(Span(place.file, place.line, place.column, len(now) + 1), now, pattern, width, say)
        yield from _shown(place.changed.by, source_line, width, say)
        return
    text = source_line(place.file, place.line)
    yield from _framed_line(place, text, "{file}, line {line}, column {column}", width, say)


def _framed_line(place: Span, text: str | None, pattern: str, width: int, say: Say) -> Iterator[str]:
    where = say(pattern, file=place.file, line=place.line, column=place.column)
    yield from _wrapped(where, "  ", width)
    if text is None:
        return
    room = width - 10
    text = "".join(letter if _can_be_seen(letter) else UNSEEN for letter in text.expandtabs(4).rstrip())
    start = max(0, min(place.column - 1 - room // 2, len(text) - room)) if len(text) > room else 0
    part = _cut(text, start, room)
    yield f"  {place.line:>4} │ {part}"
    caret = place.column - 1 - start
    length = max(1, min(place.end - place.column, room - caret))
    before, marked = part[:caret], part[caret : caret + length]
    yield f"       │ {' ' * _width(before, caret)}{'^' * _width(marked, length)}"


def _cut(text: str, start: int, room: int) -> str:
    """So many letters of a line; where it goes on, a sign that it does."""
    part = text[start : start + room]
    part = part if start == 0 else f"…{part[1:]}"
    return part if start + room >= len(text) else f"{part[:-1]}…"


def _can_be_seen(letter: str) -> bool:
    """False for letters that would steer the terminal, or turn the line round."""
    return unicodedata.category(letter) not in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")


def _width(text: str, letters: int) -> int:
    """Columns that so many letters take on a terminal: two for wide ones, none for marks on others."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    marks = sum(unicodedata.combining(letter) > 0 for letter in text)
    return letters + wide - marks


def _steps(steps: tuple[Step, ...], width: int, say: Say) -> Iterator[str]:
    """The steps, numbered; a few that come over and over are told once, with what comes of them in the end."""
    number = 0
    while number < len(steps):
        length, times = _repeated(steps, number)
        if length == 1 and times > 1:
            last = number + times - 1
            yield from _wrapped(
                say("{times} times {words}", times=times, words=steps[number].words),
                f"  {_from_to(number, last, say)}",
                width,
            )
            yield from _after(steps[last], width)
        else:
            for at in range(number, number + length):
                yield from _wrapped(steps[at].words, f"  {at:>3}. ", width)
                yield from _after(steps[at], width)
            if times > 1:
                first, last = number + length, number + length * times - 1
                pattern = "the last {length} again, {times} times more"
                if times == 2:
                    pattern = "the last {length} again, once more"
                fields = {"length": length} | ({"times": times - 1} if times > 2 else {})
                yield from _wrapped(say(pattern, **fields), f"  {_from_to(first, last, say)}", width)
                yield from _after(steps[last], width)
        number += length * times


def _from_to(first: int, last: int, say: Say) -> str:
    return say("{first} to {last}. ", first=f"{first:>3}", last=last)


def _after(step: Step, width: int) -> Iterator[str]:
    if step.after:
        yield from _wrapped(step.after, "       = ", width)


def _repeated(steps: tuple[Step, ...], start: int) -> tuple[int, int]:
    """How many steps from here on come over and over, and how often; the most that this takes together."""
    best = (1, 1)
    for length in range(1, LONGEST_RUN + 1):
        words = [step.words for step in steps[start : start + length]]
        times = 1
        while [step.words for step in steps[start + length * times : start + length * (times + 1)]] == words:
            times += 1
        if times >= TOO_MANY and len(words) == length and length * times > best[0] * best[1]:
            best = (length, times)
    return best


def _wrapped(text: str, lead: str, width: int) -> list[str]:
    hang = " " * len(lead)
    return textwrap.wrap(text, width, initial_indent=lead, subsequent_indent=hang, break_on_hyphens=False)
