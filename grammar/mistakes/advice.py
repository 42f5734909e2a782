"""Advice that works: a corrected line is offered only where the sheet with it has fewer mistakes and no new one.

All that any stage thinks might mend a mistake (`Finding.corrections`) is tried here, and nowhere else is a
line offered. What mends most comes first, then what is nearest to the line as written. Mistakes that come
only of another one go with it.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from itertools import islice

import attrs

from grammar.finding import Correction, Finding, retold
from grammar.frozen import evolve, frozen
from grammar.layout import section_name
from grammar.mistakes.lost import ONLY_SEEMING
from grammar.mistakes.sense import loses_no_word
from grammar.mistakes.spelling import spelled
from grammar.said import Value, listed, quoting, write

Judge = Callable[[str], Sequence[Finding]]
MOVE_IT = "Move it to {places}."
MOST_TRIED = 160
MOST_LINES_TRIED = 800
_AS_NEAR = 0.02
_MOST_OFFERED = 3
_MOST_WITH_NAMES = 8


@frozen
class _Tried:
    """What is left of the mistakes with a correction, or several that are as good; `gone` are the others' places."""

    finding: int
    corrections: tuple[Correction, ...]
    gone: frozenset[int]


def advised(text: str, judge: Judge, soon: Judge, kit: Collection[str] = ()) -> tuple[Finding, ...]:
    """The mistakes that `judge` finds in a text, each with the corrections that mend it, where there are such.

    `soon` finds no fewer, of which some may only seem so: the best is sought with it, and tried with `judge`. `kit` are
    the names that need not be declared.
    """
    found = tuple(judge(text))
    lines = re.split(r"\r\n|\r|\n", text)
    tried = list(_tried(text, found, lines, (judge, soon), kit)) if found and len(lines) <= MOST_LINES_TRIED else []
    told = {index: attrs.evolve(finding, corrections=()) for index, finding in enumerate(found)}
    for best in sorted(tried, key=lambda each: (-len(each.gone), each.finding)):
        if best.finding in told:
            told[best.finding] = _with(found[best.finding], best, lines, [found[at] for at in best.gone])
            for at in best.gone - {best.finding}:
                told.pop(at, None)
    return tuple(sorted(told.values(), key=lambda finding: (finding.place.line, finding.place.column)))


def _tried(
    text: str, found: Sequence[Finding], lines: Sequence[str], judges: tuple[Judge, Judge], kit: Collection[str]
) -> Iterator[_Tried]:
    judge, soon = judges
    left, seeming = MOST_TRIED, tuple(soon(text))
    for index, finding in enumerate(found):
        ways = (finding.corrections, _spelled(finding, lines, kit), _with_the_name_too(finding, lines, soon, kit))
        for several in map(_once, ways):
            hopeful = list[tuple[int, Correction]]()
            for correction in several:
                if left:
                    left -= 1
                    hopeful += _hope(finding, correction, seeming, soon(applied(lines, correction)))
            best = _best(index, found, lines, judge, hopeful)
            if best:
                yield best
                break


def _hope(
    finding: Finding, correction: Correction, before: Sequence[Finding], after: Sequence[Finding]
) -> list[tuple[int, Correction]]:
    """The correction, with how many mistakes fewer there seem to be, where it may mend this one.

    New mistakes that may only seem so do not count against it.
    """
    was, left = (Counter(_about(each) for each in found if each.code not in ONLY_SEEMING) for found in (before, after))
    mends = Counter(map(_about, before))[_about(finding)] > Counter(map(_about, after))[_about(finding)]
    hope = mends and not left - was and _is_sound(correction, after)
    return [(len(before) - len(after), correction)] if hope else []


def _best(
    index: int, found: Sequence[Finding], lines: Sequence[str], judge: Judge, hopeful: Sequence[tuple[int, Correction]]
) -> _Tried | None:
    """The corrections that mend most, and of those the nearest: the first that holds, and others that are as good."""
    first: tuple[frozenset[int], Correction] | None = None
    as_good: list[Correction] = []
    for _, correction in sorted(hopeful, key=lambda each: (-each[0], each[1].cost)):
        if first and (len(as_good) == _MOST_OFFERED or not _as_near(correction, first[1])):
            break
        after = judge(applied(lines, correction))
        gone = _gone(found, after, correction.place.line)
        if index in gone and _is_sound(correction, after) and (first is None or gone == first[0]):
            first = first or (gone, correction)
            as_good.append(correction)
    return _Tried(index, tuple(as_good), first[0]) if first else None


def _spelled(finding: Finding, lines: Sequence[str], kit: Collection[str]) -> Iterator[Correction]:
    """The line with all words put right that stand nowhere else, where nothing that a stage thinks of mends it."""
    if 0 < finding.place.line <= len(lines):
        for line, said, word in spelled(lines, finding.place.line, kit):
            at = lines[finding.place.line - 1].lower().index(word) + 1
            mark = evolve(finding.place, column=at, end=at + len(word))
            yield Correction(finding.place, line, code="L-sentence", title=said, mark=mark)


def _with_the_name_too(
    finding: Finding, lines: Sequence[str], soon: Judge, kit: Collection[str]
) -> Iterator[Correction]:
    """The line made a sentence with the name put right, too, that means nothing in it: one line may hold two slips."""
    if finding.code != "L-sentence":
        return
    for first in islice(_once((*finding.corrections, *_spelled(finding, lines, kit))), _MOST_WITH_NAMES):
        left = [each for each in soon(applied(lines, first)) if each.place.line == first.place.line]
        if len(left) == 1 and left[0].code == "G-unknown" and not first.section:
            names = (each for each in left[0].corrections if each.place.line == first.place.line)
            written = lines[first.place.line - 1]
            sensible = (each for each in names if loses_no_word(written, each.line))
            yield from (evolve(first, line=each.line, cost=first.cost + each.cost) for each in sensible)


def _once(corrections: Iterable[Correction]) -> Iterator[Correction]:
    """Each correction once, at its lowest cost."""
    known = set()
    for each in sorted(corrections, key=lambda correction: correction.cost):
        if (each.place, each.line, each.section) not in known:
            known.add((each.place, each.line, each.section))
            yield each


def _as_near(one: Correction, first: Correction) -> bool:
    return one.cost - first.cost <= _AS_NEAR and one.place == first.place


def _gone(before: Sequence[Finding], after: Sequence[Finding], line: int) -> frozenset[int]:
    """Which mistakes are no longer there after a correction of that line; none where there is a new one."""
    left = Counter(_about(finding) for finding in after)
    gone = set()
    for index, finding in sorted(enumerate(before), key=lambda each: each[1].place.line == line):
        if left[_about(finding)]:
            left[_about(finding)] -= 1
        else:
            gone.add(index)
    return frozenset() if +left else frozenset(gone)


def _is_sound(correction: Correction, left: Sequence[Finding]) -> bool:
    """Whether the line to write has no mistake of its own: nobody is told to write what is refused again."""
    return bool(correction.section) or all(each.place.line != correction.place.line for each in left)


def _about(finding: Finding) -> tuple[str, str]:
    return finding.code, finding.title


def applied(lines: Sequence[str], correction: Correction) -> str:
    """The text with a correction: its lines stand as far in as the one whose place they take."""
    at = correction.place.line - 1
    lead = lines[at][: len(lines[at]) - len(lines[at].lstrip())]
    new = [lead + line for line in correction.line.split("\n")]
    if not correction.section:
        return "\n".join([*lines[:at], *new, *lines[at + 1 :]])
    headings = [number for number, line in enumerate(lines) if line[:1].strip() and section_name(line)]
    mine = [number for number in headings if section_name(lines[number]) == correction.section]
    kept = [*lines[:at], *lines[at + 1 :]]
    if not mine:
        return "\n".join([*kept, correction.section, *new])
    end = next((number for number in headings if number > mine[-1]), len(lines))
    end -= end > at
    return "\n".join([*kept[:end], *new, *kept[end:]])


def _with(finding: Finding, best: _Tried, lines: Sequence[str], gone: Sequence[Finding]) -> Finding:
    """The finding as the correction sees it, with the line to write."""
    first = best.corrections[0]
    place = first.mark or finding.place
    places = {each: None for one in gone for each in (one.place, *one.others)}
    elsewhere = tuple(each for each in places if each.line != place.line) if first.mark else finding.others
    return retold(
        finding,
        first.title,
        _offered(best.corrections, lines[first.place.line - 1].strip()),
        code=first.code or finding.code,
        place=place,
        others=elsewhere if first.place.line != finding.place.line else finding.others,
        corrections=best.corrections,
    )


def _offered(corrections: Sequence[Correction], written: str) -> Value:
    first = corrections[0]
    if first.section:
        places = listed((f"`{each.section}`" for each in corrections if each.line == first.line), "or")
        if first.line == written:
            return quoting(MOVE_IT, places=places)
        return quoting("Move it to {places} and write: {line}", places=places, line=first.line)
    if "\n" in first.line:
        heading, below = first.line.split("\n")
        hint = "Write `{heading}` on a line of its own, and below it: {line}"
        return quoting(hint, heading=heading, line=below.strip())
    if not first.sure:
        return quoting("Take another word for it, or write: {line}", line=first.line)
    if len(corrections) > 1 and not any(each.section or "\n" in each.line for each in corrections):
        lines = listed((f"`{each.line}`" for each in corrections), "or")
        return quoting("Write one of these: {lines}.", lines=lines)
    return write(first.line)
