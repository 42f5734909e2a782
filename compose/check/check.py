"""The check: explore the net, then look for everything that can be proved about it."""

from __future__ import annotations

from compose.check.explore import TooLarge, explore
from compose.check.findings import AT_THE_START, FINDINGS, STUCK_AT_ONCE, Check
from compose.check.findings.all_wait import all_waiting
from compose.check.findings.limits import over_budget, too_large, unfinished
from compose.check.findings.stall import hold_out
from compose.check.findings.stranded_for_good import stranded_for_good
from compose.check.findings.unseen import unseen
from compose.check.found import Found
from compose.check.graph import longest_line
from compose.check.match import can_win
from compose.check.one_cause import one_cause
from compose.check.patience import Patience, StoppedError
from compose.check.space import USUAL, Budget, StateSpace
from compose.check.study import Study
from compose.net.net import Net
from grammar.frozen import evolve, frozen


@frozen
class Facts:
    """What the report tells besides the findings.

    `states` were seen and `looked` of them looked into; None stands for "not known" where that is not the whole.
    `ends_surely`: play ends with probability 1 without the help of a clock, if all sides play on; `held_up_by`:
    sides of which one alone can keep it from that; `all_wait`: whether all can that together, and none gains by playing
    on. `longest`: the most moves a round can take, None also
    where it can go on for as long as it likes. `shortest`: the fewest moves to an end, None for none
    found. `can_win`: sides for which a win of the whole match was found (all of them where the space is whole).
    """

    states: int
    looked: int
    ends: int
    edges: int
    complete: bool
    ends_surely: bool | None
    held_up_by: tuple[str, ...] | None
    all_wait: bool
    can_win: tuple[str, ...]
    shortest: int | None
    longest: int | None


@frozen(eq=False)
class CheckResult:
    """The findings in the order of the checks, the space (None where too large to number), the facts."""

    findings: tuple[Found, ...]
    space: StateSpace | None
    facts: Facts | None


def check(net: Net, budget: Budget = USUAL, turned: Net | None = None) -> CheckResult:
    """Everything that is proved about a net within the budget; `turned` is its second half, where that differs."""
    patience = Patience(budget)
    each = budget if turned is None else evolve(budget, megabytes=budget.megabytes / 2)
    space = explore(net, each)
    if isinstance(space, TooLarge):
        return CheckResult((too_large(space), *unseen(net)), None, None)
    other = explore(turned, each) if turned is not None else None
    if isinstance(other, TooLarge):
        return CheckResult((too_large(other), *unseen(net)), None, None)
    study = Study(space, patience, Study(other, patience) if other is not None else None)
    found, missed = over_budget(space, budget), []
    for entry in _asked(study):
        if not space.complete and entry.whole:
            continue
        try:
            found += entry.look(study)
        except StoppedError:
            missed.append(entry.about)
    if not space.complete and not study.ended[0]:
        found = one_cause([*found, *stranded_for_good(study), *unseen(net)], only_lost=False)
    if space.complete and not missed:
        found = one_cause(found, only_lost=all(end.winner not in (None, *can_win(study)) for end in net.ends))
    return CheckResult((*found, *unfinished(missed)), space, _facts(study))


def _asked(study: Study) -> tuple[Check, ...]:
    """All findings, but where the round is over before it starts, or nothing can happen, that alone."""
    if study.ended[0]:
        return AT_THE_START
    return STUCK_AT_ONCE if 0 in study.dead_ends[:1] else FINDINGS


def _facts(study: Study) -> Facts:
    space = study.space
    ends_surely, shortest, longest = _far_facts(study)
    return Facts(
        states=space.states,
        looked=space.expanded,
        ends=int(study.ended.sum()),
        edges=space.edges,
        complete=space.complete,
        ends_surely=ends_surely,
        held_up_by=_held_up_by(study),
        all_wait=_all_wait(study),
        can_win=can_win(study),
        shortest=shortest,
        longest=longest,
    )


def _far_facts(study: Study) -> tuple[bool | None, int | None, int | None]:
    """Whether play ends surely, and the fewest and the most moves; None where it was stopped before."""
    whole = study.space.complete
    try:
        shortest = int(study.to_end[0])
        surely = bool(study.can_end.all()) if whole else None
    except StoppedError:
        return None, None, None
    try:
        longest = longest_line(study.space, study.patience) if whole else None
    except StoppedError:
        longest = None
    return surely, shortest if shortest >= 0 else None, longest


def _held_up_by(study: Study) -> tuple[str, ...] | None:
    """The sides that can hold the round up, None where that is not known."""
    if not study.space.complete:
        return None
    try:
        return tuple(side for side in study.net.sides if hold_out(study, side).any())
    except StoppedError:
        return None


def _all_wait(study: Study) -> bool:
    """Whether all sides can wait for one another, as far as that is known."""
    try:
        return study.space.complete and bool(all_waiting(study).size)
    except StoppedError:
        return False
