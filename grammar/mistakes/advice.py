"""Advice that works: a corrected line is offered only where the sheet with it has fewer mistakes and no new one.

All that any stage thinks might mend a mistake (`Finding.corrections`) is tried here, and nowhere else is a
line offered. What mends most comes first, then what is nearest to the line as written. Mistakes that come
only of another one go with it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from itertools import islice

import attrs

from grammar.finding import Correction, Finding
from grammar.frozen import evolve, frozen
from grammar.layout import section_name
from grammar.mistakes.lost import ONLY_SEEMING
from grammar.mistakes.offered import with_lines
from grammar.mistakes.sense import loses_no_word
from grammar.mistakes.spelling import spelled

Judge = Callable[[str], Sequence[Finding]]
MOST_TRIED = 160
_AS_NEAR = 0.02
_MOST_OFFERED = 3
_MOST_WITH_NAMES = 8


@frozen
class Tried:
    """A mistake, by its number, with the corrections that mend it as well as each other, and all mistakes that go."""

    finding: int
    corrections: tuple[Correction, ...]
    gone: frozenset[int]


def with_advice(found: Sequence[Finding], tried: Iterable[Tried], lines: Sequence[str]) -> tuple[Finding, ...]:
    """The mistakes of a text with their corrections; those that come only of another one go with it."""
    told = {index: attrs.evolve(finding, corrections=()) for index, finding in enumerate(found)}
    for best in not_of_others(tried):
        gone = [found[at] for at in best.gone]
        told[best.finding] = with_lines(found[best.finding], best.corrections, lines, gone)
        for at in best.gone - {best.finding}:
            told.pop(at, None)
    return tuple(sorted(told.values(), key=lambda finding: (finding.place.line, finding.place.column)))


def not_of_others(tried: Iterable[Tried]) -> Iterator[Tried]:
    """Those that mend most first, without those whose mistake goes with another."""
    gone = set[int]()
    for best in sorted(tried, key=lambda each: (-len(each.gone), each.finding)):
        if best.finding not in gone:
            gone |= best.gone - {best.finding}
            yield best


def tried(
    found: Sequence[Finding],
    which: Iterable[int],
    lines: Sequence[str],
    judges: tuple[Judge, Judge],
    kit: Collection[str],
    all_of_them: bool = True,
) -> Iterator[Tried]:
    """The corrections that mend the mistakes of these numbers, one mistake after the other.

    `judges` are what finds the mistakes of a text, and what soon finds no fewer, of which some may only seem so: the
    best is sought with this, and tried with that. `kit` are the names that need not be declared. Not `all_of_them`:
    the nearest that hold do, for that is quick.
    """
    judge, soon = judges
    left, seeming = MOST_TRIED, tuple(soon("\n".join(lines)))

    def hope(finding: Finding, correction: Correction) -> list[tuple[int, Correction]]:
        nonlocal left
        left -= 1
        return _hope(finding, correction, seeming, soon(applied(lines, correction))) if left >= 0 else []

    for index in which:
        finding = found[index]
        ways = (finding.corrections, _spelled(finding, lines, kit), _with_the_name_too(finding, lines, soon, kit))
        for several in map(_once, ways):
            hopeful, best = list[tuple[int, Correction]](), None
            for correction in several:
                if hopeful and not all_of_them and not _as_near(correction, hopeful[0][1]):
                    best = _best(index, found, lines, judge, hopeful)
                    if best:
                        break
                    hopeful.clear()
                hopeful += hope(finding, correction)
            best = best or _best(index, found, lines, judge, hopeful)
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
) -> Tried | None:
    """The corrections that mend most, and of those the nearest: the first that holds, and others that are as good."""
    first: tuple[frozenset[int], Correction] | None = None
    as_good: list[Correction] = []
    for _, correction in sorted(hopeful, key=lambda each: (-each[0], each[1].cost)):
        if first and (len(as_good) == _MOST_OFFERED or not _as_near(correction, first[1])):
            break
        after = judge(applied(lines, correction))
        gone = gone_with(found, after, correction)
        if index in gone and (first is None or gone == first[0]):
            first = first or (gone, correction)
            as_good.append(correction)
    return Tried(index, tuple(as_good), first[0]) if first else None


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


def gone_with(before: Sequence[Finding], after: Sequence[Finding], correction: Correction) -> frozenset[int]:
    """Which mistakes are no longer there after a correction; none where there is a new one, or its line is wrong."""
    left = Counter(_about(finding) for finding in after)
    gone = set()
    for index, finding in sorted(enumerate(before), key=lambda each: each[1].place.line == correction.place.line):
        if left[_about(finding)]:
            left[_about(finding)] -= 1
        else:
            gone.add(index)
    return frozenset(gone) if not +left and _is_sound(correction, after) else frozenset()


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
