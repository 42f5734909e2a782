"""What play shows, where the sheet alone has shown its cause: it is told there, and not again.

Sides that are mirror images win alike: that one of those which are called so can win and another cannot comes of what
makes them unlike, and so it is with what lies with one of them where nobody uses it. Whose successes give points to
another side has none. And where nothing can come of a line, what it would have changed never changes.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.findings.idle_kit import CODE as IDLE_KIT
from compose.check.findings.no_end import CODE as NO_END
from compose.check.findings.unwinnable import CODE as UNWINNABLE
from compose.check.found import Found
from compose.net.barren import Barren
from compose.net.lower.mirrored import CODE as UNLIKE
from compose.net.lower.own_down import CODE as OWN_DOWN
from compose.net.net import Net
from compose.telling.english.findings import findings_told
from grammar.finding import IDLE, Finding, Severity
from grammar.frozen import evolve
from grammar.said import Chain, said

GOES_WITH = "It goes with that: {title}"


def of_one_cause(of_sheet: Sequence[Finding], found: Sequence[Found], net: Net) -> tuple[Finding, ...]:
    """What was said of the sheet, then what the check found besides; what comes of the same is told with the former."""
    causes, apart = list(of_sheet), []
    for each in found:
        number = next((n for n, cause in enumerate(causes) if _comes_of(each, cause, net)), None)
        if number is None:
            apart.append(each)
        else:
            causes[number] = _told_with(causes[number], each, net)
    return (*causes, *findings_told(apart, net))


def _comes_of(found: Found, cause: Finding, net: Net) -> bool:
    if found.severity is not Severity.WARNING or cause.severity is Severity.NOTE:
        return False
    if cause.code == UNLIKE:
        lying = (each for each in net.barren if each.at in (cause.place, *cause.others))
        if found.code in (IDLE, IDLE_KIT):
            return any(found.about & each.aimed for each in lying)
        return found.code == UNWINNABLE and bool(found.sides) and found.sides < set(net.mirrored)
    if cause.code == OWN_DOWN:
        alone = found.sides < set(net.sides) and found.sides <= found.scores
        return found.code == UNWINNABLE and bool(found.sides) and alone
    return any(_for_nothing(found, barren) for barren in net.barren if barren.at == cause.place)


def _for_nothing(found: Found, barren: Barren) -> bool:
    told_of = {found.place, *found.others}
    if found.code == IDLE:
        return bool(told_of & {barren.at, *barren.about})
    return found.code in (UNWINNABLE, NO_END) and bool(found.about & barren.aimed or told_of & barren.about)


def _told_with(cause: Finding, found: Found, net: Net) -> Finding:
    (told,) = findings_told((found,), net)
    spans = (span for span in (*cause.others, told.place, *told.others) if span != cause.place)
    in_values = cause.said and (cause.said[0], Chain((cause.said[1], said(GOES_WITH, title=found.title))))
    hint = f"{cause.hint} {GOES_WITH.format(title=told.title)}"
    return evolve(cause, hint=hint, others=tuple(dict.fromkeys(spans)), said=in_values)
