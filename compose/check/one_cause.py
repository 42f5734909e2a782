"""One cause is one finding: what only follows from what is told before is said there, and not again.

A class is not helped by four findings for one slip. Which cause is the same is known from places alone: a line that
never takes effect would change what for that never changes, or give points that nobody has, or is short of the kit that
nobody uses; with what lies where nobody fetches it a chance is lost, and play may go round for ever. Where play gets
stuck because one side has nobody in, what the same end of the round would mend goes with it.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.findings.dead_end import CODE as DEAD_END
from compose.check.findings.endless import CODE as ENDLESS
from compose.check.findings.idle_kit import CODE as IDLE_KIT
from compose.check.findings.no_end import CODE as NO_END
from compose.check.findings.no_return import CODE as NO_RETURN
from compose.check.findings.stranded import CODE as STRANDED
from compose.check.findings.unwinnable import CODE as UNWINNABLE
from compose.check.found import Found
from grammar.finding import IDLE, Severity
from grammar.frozen import evolve
from grammar.said import Chain, said

COMES_OF = {  # what follows from which findings, where they speak of the same places
    NO_RETURN: (DEAD_END, STRANDED),
    STRANDED: (ENDLESS,),
    NO_END: (UNWINNABLE,),
    IDLE: (UNWINNABLE, NO_END),
    IDLE_KIT: (IDLE, STRANDED),
}
MENDED_BESIDE = (NO_RETURN, NO_END)  # what these say of mending, the graver finding says better


def one_cause(found: Sequence[Found], only_lost: bool) -> list[Found]:
    """The findings without those that come of another; `only_lost`: each end is the win of a side that never wins."""
    kept = list(found)
    if only_lost and any(each.code == UNWINNABLE for each in kept):
        kept = [each for each in kept if each.code != NO_END]
    for later in found:
        earlier = next((each for each in kept if each is not later and _follows(later, each)), None)
        if earlier is not None and later in kept:
            kept[kept.index(earlier)] = _told_with(earlier, later)
            kept.remove(later)
    return kept


def _follows(later: Found, earlier: Found) -> bool:
    """Whether one comes of the same cause as the other, which is the graver."""
    if earlier.code == DEAD_END and earlier.when_alone and later.when_alone:
        return True
    if later.of_one_side:  # that a line never takes effect is told already, of whoever it is
        return later.place in (earlier.place, *earlier.others) and earlier.severity is not Severity.NOTE
    if earlier.code == STRANDED and later.code in (IDLE, STRANDED):  # by which line, or ball, they would have come back
        return bool(later.frees & earlier.about) or (later.code == IDLE and later.astray and earlier.astray)
    if (later.code, earlier.code) == (NO_END, DEAD_END):  # play gets stuck before, for want of what lies somewhere
        return bool(earlier.about) and not later.about
    same = bool(later.about & earlier.about or later.scores & earlier.scores)
    follows = earlier.code in COMES_OF.get(later.code, ()) and same
    return follows and earlier.severity is not Severity.NOTE


def _told_with(earlier: Found, later: Found) -> Found:
    """The one finding for both."""
    others = tuple(dict.fromkeys((*earlier.others, later.place, *later.others)))
    told = said("It goes with that: {title}", title=later.title)
    alike = earlier.code == later.code == STRANDED or later.of_one_side
    better = later.code in MENDED_BESIDE or later.when_alone or alike
    why = () if better else (later.hint,)
    both = later.when_alone or (earlier.code, later.code) == (STRANDED, IDLE)
    about = earlier.about | (later.about if both else frozenset())
    return evolve(earlier, hint=Chain((earlier.hint, told, *why)), others=others, about=about)
