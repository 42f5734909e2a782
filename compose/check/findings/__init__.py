"""The findings of the check, one per module, in the order in which they are reported."""

from __future__ import annotations

from collections.abc import Callable

from compose.check.findings.all_wait import all_wait
from compose.check.findings.best_of_nothing import best_of_nothing
from compose.check.findings.chase import chase
from compose.check.findings.dead_end import dead_end
from compose.check.findings.ended_before import ended_before
from compose.check.findings.endless import endless
from compose.check.findings.idle import idle
from compose.check.findings.idle_kit import idle_kit
from compose.check.findings.idle_part import idle_part
from compose.check.findings.idle_side import idle_side
from compose.check.findings.level_bell import level_bell
from compose.check.findings.no_end import no_end
from compose.check.findings.no_return import no_return
from compose.check.findings.one_half import one_half
from compose.check.findings.stall import stall
from compose.check.findings.started_over import started_over
from compose.check.findings.stranded import stranded
from compose.check.findings.two_winners import two_winners
from compose.check.findings.unwinnable import unwinnable
from compose.check.found import Found
from compose.check.study import Study
from grammar.frozen import frozen


@frozen
class Check:
    """A finding to look for; `whole` where it claims absence and so needs the whole space.

    `about` says in a few words what it looks for.
    """

    look: Callable[[Study], list[Found]]
    whole: bool
    about: str


FINDINGS: tuple[Check, ...] = (
    Check(started_over, whole=False, about="a round that is over before it starts"),
    Check(two_winners, whole=False, about="two winners"),
    Check(chase, whole=False, about="rules that set each other off"),
    Check(ended_before, whole=False, about="ends before the clock"),
    Check(best_of_nothing, whole=False, about="rounds that nobody can win"),
    Check(no_end, whole=True, about="a round that nothing ends"),
    Check(dead_end, whole=False, about="dead ends"),
    Check(endless, whole=False, about="play that goes round for ever"),
    Check(unwinnable, whole=True, about="sides that cannot win"),
    Check(one_half, whole=True, about="sides that cannot win a half"),
    Check(level_bell, whole=True, about="a bell at which nobody can lead"),
    Check(stranded, whole=True, about="stranded kit and players"),
    Check(stall, whole=True, about="a side that holds the round up"),
    Check(all_wait, whole=True, about="sides that wait for one another"),
    Check(idle, whole=True, about="rules without effect"),
    Check(idle_part, whole=True, about="parts of rules without effect"),
    Check(idle_side, whole=True, about="sides that can do nothing"),
    Check(idle_kit, whole=True, about="kit without use"),
    Check(no_return, whole=True, about="points of no return"),
)
AT_THE_START = FINDINGS[:1]  # of a round that is over before it starts; all else follows from that
STUCK_AT_ONCE = tuple(each for each in FINDINGS if each.look is dead_end)  # of a round in which nothing can happen
