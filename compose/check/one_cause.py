"""One cause is one finding: what only follows from what is told before is said there, and not again.

A class is not helped by four findings for one slip. Which cause is the same is known from places alone: a line that
never takes effect would change what for that never changes; a chance is lost with what lies where nobody fetches it.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.findings.dead_end import CODE as DEAD_END
from compose.check.findings.idle import CODE as IDLE
from compose.check.findings.no_end import CODE as NO_END
from compose.check.findings.no_return import CODE as NO_RETURN
from compose.check.findings.stranded import CODE as STRANDED
from compose.check.findings.unwinnable import CODE as UNWINNABLE
from compose.check.found import Found
from grammar.finding import Severity
from grammar.frozen import evolve
from grammar.said import Chain, said

LYING = (DEAD_END, STRANDED)
NEVER = (UNWINNABLE, NO_END)


def one_cause(found: Sequence[Found], everybody_loses: bool) -> list[Found]:
    """The findings without those that come of another; `everybody_loses`: no side can ever win."""
    kept = list(found)
    if everybody_loses and any(each.code == UNWINNABLE for each in kept):
        kept = [each for each in kept if each.code != NO_END]
    for later in found:
        earlier = next((each for each in kept if each is not later and _follows(later, each)), None)
        if earlier is not None and later in kept:
            kept[kept.index(earlier)] = _told_with(earlier, later)
            kept.remove(later)
    return kept


def _follows(later: Found, earlier: Found) -> bool:
    """Whether one comes of the same cause as the other, which is the graver."""
    if not later.about & earlier.about or earlier.severity is Severity.NOTE:
        return False
    if later.code == NO_RETURN:
        return earlier.code in LYING
    return later.code == IDLE and earlier.code in NEVER


def _told_with(earlier: Found, later: Found) -> Found:
    """The one finding for both."""
    others = tuple(dict.fromkeys((*earlier.others, later.place, *later.others)))
    told = said("It goes with that: {title}", title=later.title)
    why = (later.hint,) if later.code == IDLE else ()
    return evolve(earlier, hint=Chain((earlier.hint, told, *why)), others=others)
