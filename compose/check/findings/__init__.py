"""The findings of the check, one per module, in the order in which they are reported."""

from __future__ import annotations

from collections.abc import Callable

from attrs import frozen

from compose.check.findings.bell_result import bell_result
from compose.check.findings.chase import chase
from compose.check.findings.dead_end import dead_end
from compose.check.findings.endless import endless
from compose.check.findings.idle import idle
from compose.check.findings.idle_kit import idle_kit
from compose.check.findings.no_end import no_end
from compose.check.findings.no_return import no_return
from compose.check.findings.stall import stall
from compose.check.findings.started_over import started_over
from compose.check.findings.stranded import stranded
from compose.check.findings.two_winners import two_winners
from compose.check.findings.unwinnable import unwinnable
from compose.check.study import Study
from grammar.finding import Finding


@frozen
class Check:
    """A finding to look for; `whole` where it claims absence and so needs the whole space."""

    look: Callable[[Study], list[Finding]]
    whole: bool


FINDINGS: tuple[Check, ...] = (
    Check(started_over, whole=False),
    Check(two_winners, whole=False),
    Check(chase, whole=False),
    Check(bell_result, whole=False),
    Check(no_end, whole=True),
    Check(dead_end, whole=True),
    Check(endless, whole=True),
    Check(unwinnable, whole=True),
    Check(stranded, whole=True),
    Check(stall, whole=True),
    Check(idle, whole=True),
    Check(idle_kit, whole=True),
    Check(no_return, whole=True),
)
