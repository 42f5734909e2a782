"""Advice in time: for all mistakes of a sheet with few, for the first ones of a sheet with many.

Each line that may be offered is tried on the whole sheet, so that a hundred mistakes took a minute. Where there are
many, lines are sought on a part of the sheet, without the lines of later mistakes. What holds there is then tried on
the whole sheet, the lines for all mistakes together. A note says from where on none was sought.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Sequence

from attrs import define, evolve

from grammar.finding import Correction, Finding, Severity, spoken
from grammar.mistakes.advice import Judge, Tried, applied, gone_with, not_of_others, tried, with_advice

MOST_ADVISED = 12  # our choice: as many as the page tells; who has mended these looks again
MOST_LINES_TRIED = 800
MOST_RESOLVED_LINES = 3_000  # resolved for it where there are more, in tries together: our choice, half a second


@define
class _Effort:
    """What may still be spent, in lines resolved: the same on every machine."""

    left: int

    def counting(self, judge: Judge, times: int) -> Judge:
        """The same judge, who spends so much for each line of a text."""

        def judged(text: str) -> Sequence[Finding]:
            self.left -= times * sum(bool(line.strip()) for line in text.split("\n"))
            return judge(text)

        return judged


def advised(text: str, judge: Judge, soon: Judge, kit: Collection[str] = ()) -> tuple[Finding, ...]:
    """The mistakes that `judge` finds in a text, with the lines that mend the first of them; `soon`, `kit` as for
    `tried`. From where on no line was sought, a note says."""
    found = tuple(judge(text))
    lines = re.split(r"\r\n|\r|\n", text)
    if len(found) <= MOST_ADVISED and len(lines) <= MOST_LINES_TRIED:
        every = tried(found, range(len(found)), lines, (judge, soon), kit) if found else ()
        return with_advice(found, every, lines)
    effort = _Effort(MOST_RESOLVED_LINES if len(lines) <= MOST_LINES_TRIED else 0)
    judges = effort.counting(judge, 2), effort.counting(soon, 1)
    best, last = _of_the_first(found, lines, judges, kit, effort)
    advice = with_advice(found, _proved(found, best, lines, judges[0], effort), lines)
    beyond = {_which(each) for each in found[last + 1 :]}
    at = next((number for number, each in enumerate(advice) if _which(each) in beyond), len(advice))
    return (*advice[:at], *(_later(each) for each in advice[at : at + 1]), *advice[at:])


def _of_the_first(
    found: Sequence[Finding], lines: Sequence[str], judges: tuple[Judge, Judge], kit: Collection[str], effort: _Effort
) -> tuple[list[Tried], int]:
    """What mends the first mistakes on a part of the sheet, by their numbers in all of it; and the last one tried."""
    part = _part(lines, found)
    seen = judges[0]("\n".join(part)) if effort.left > 0 else ()
    number = {_which(each): at for at, each in reversed([*enumerate(found)])}
    numbers = [number.get(_which(each), len(found)) for each in seen]
    last = -1

    def affordable() -> Iterator[int]:
        nonlocal last
        for at in sorted(range(len(seen)), key=lambda at: numbers[at]):
            if numbers[at] >= MOST_ADVISED or effort.left <= 0:
                return
            last = numbers[at]
            yield at

    every = [*tried(seen, affordable(), part, judges, kit, all_of_them=False)] if seen else []
    of_all = [
        Tried(numbers[each.finding], each.corrections, frozenset(map(numbers.__getitem__, each.gone)) - {len(found)})
        for each in every
    ]
    return of_all, last


def _part(lines: Sequence[str], found: Sequence[Finding]) -> list[str]:
    """The lines, those left empty that are wrong and not among the first: each stays in its place."""
    first, later = ({each.place.line for each in some} for some in (found[:MOST_ADVISED], found[MOST_ADVISED:]))
    return ["" if at in later - first and line[:1].isspace() else line for at, line in enumerate(lines, start=1)]


def _proved(
    found: Sequence[Finding], best: Sequence[Tried], lines: Sequence[str], judge: Judge, effort: _Effort
) -> Iterator[Tried]:
    """What holds on the whole sheet: the lines for all mistakes together, or each by itself while there is time."""
    chosen = [*not_of_others(best)]
    plain = [each for each in chosen if not any(one.section or "\n" in one.line for one in each.corrections)]
    if _hold_together(found, plain, lines, judge):
        yield from plain
        chosen = [each for each in chosen if each not in plain]
    for each in chosen:
        first = each.corrections[0]
        if effort.left > 0 and each.gone <= gone_with(found, judge(applied(lines, first)), first):
            yield evolve(each, corrections=(first,))


def _hold_together(found: Sequence[Finding], best: Sequence[Tried], lines: Sequence[str], judge: Judge) -> bool:
    """Whether what each of them mends is gone, and nothing new: with the first line for each, then with the others.

    A wrong line may be told of otherwise: of so many only is it sought what they were meant to be.
    """
    wrong = {each.place.line for each in found}
    gone = Counter(_about(found[at]) for at in frozenset().union(*(each.gone for each in best)))
    expected = Counter(map(_about, found)) - gone
    for turn in range(max((len(each.corrections) for each in best), default=0)):
        written = {one.place.line: one for one in (_in_turn(each, turn) for each in best)}
        text = list(lines)
        for one in written.values():
            text = applied(text, one).split("\n")
        after = judge("\n".join(text))
        left = Counter(map(_about, after))
        more = left - expected
        if any(_about(each) in more and each.place.line not in wrong for each in after):
            return False
        if any(each.place.line in written for each in after) or any(each in more for each in gone):
            return False
    return True


def _in_turn(best: Tried, turn: int) -> Correction:
    return best.corrections[min(turn, len(best.corrections) - 1)]


def _about(finding: Finding) -> tuple[str, str]:
    return finding.code, finding.title


def _which(finding: Finding) -> tuple[str, str, object]:
    return finding.code, finding.title, finding.place


def _later(first: Finding) -> Finding:
    title = "From here on it is not worked out yet what to write instead."
    hint = "Mend what stands above first, then look again: it goes on from there."
    return spoken("L-later", Severity.NOTE, title, first.place, hint)
