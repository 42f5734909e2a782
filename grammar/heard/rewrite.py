"""Where a line says something that the language words otherwise, and the line in the language's wording."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from grammar.frozen import frozen
from grammar.mistakes.wording import ANYWHERE, USUAL_COST
from grammar.mistakes.wordings import WORDINGS


@frozen
class Rewrite:
    """A stretch of a line, from letter `start` to `end`, in the wording of the language.

    `wording` is its number in the table; `said` tells the teacher what is wrong, where old and new do not.
    """

    old: str
    new: str
    start: int
    end: int
    wording: int
    said: str = ""
    cost: float = USUAL_COST


def rewrites(section: str, line: str) -> Iterator[Rewrite]:
    """Every stretch of the line for which the language has another wording; texts in quotes stay."""
    for number, wording in enumerate(WORDINGS):
        if wording.sections != ANYWHERE and section not in wording.sections:
            continue
        for match in wording.old.finditer(line):
            new = wording.new(match) if callable(wording.new) else match.expand(wording.new)
            in_text = _quoted(line, match.start()) and new != '"'
            if new != match.group() and not in_text:
                yield Rewrite(match.group(), new, match.start(), match.end(), number, wording.said, wording.cost)


def rewritten(line: str, chosen: Sequence[Rewrite]) -> str:
    """The line with rewrites that do not overlap, in the order in which they stand."""
    for rewrite in reversed(chosen):
        line = line[: rewrite.start] + rewrite.new + line[rewrite.end :]
    return line


def choices(found: Sequence[Rewrite]) -> Iterator[tuple[Rewrite, ...]]:
    """Each wording wherever it applies, and all wordings together; rewrites that overlap are left out."""
    for number in dict.fromkeys(rewrite.wording for rewrite in found):
        yield _apart([rewrite for rewrite in found if rewrite.wording == number])
    if len({rewrite.wording for rewrite in found}) > 1:
        yield _apart(found)


def _apart(found: Sequence[Rewrite]) -> tuple[Rewrite, ...]:
    kept: list[Rewrite] = []
    for rewrite in found:
        if all(rewrite.start >= other.end or rewrite.end <= other.start for other in kept):
            kept.append(rewrite)
    return tuple(sorted(kept, key=lambda rewrite: rewrite.start))


def _quoted(line: str, index: int) -> bool:
    return len(re.findall(r"[\"“”„«»]", line[:index])) % 2 == 1
