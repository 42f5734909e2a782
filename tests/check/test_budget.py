"""Budgets: states, memory, and somebody who says stop; what is known by then is still told."""

from __future__ import annotations

import numpy as np
import pytest

from compose.check import Budget, StateSpace, check, explore
from compose.check.graph import distances, longest_line
from compose.check.patience import Patience, StoppedError
from compose.check.study import Study
from tests.benchmarks.lantern_net import lantern_row


def test_memory_is_a_budget_of_its_own() -> None:
    net = lantern_row(14, 6, 8)
    small = explore(net, Budget(megabytes=5.0))
    whole = explore(net)
    assert isinstance(small, StateSpace) and isinstance(whole, StateSpace)
    assert not small.complete and whole.complete
    arrays = (small.codes, small.end_of, small.clash_of, small.parents, small.by, small.offsets, small.targets)
    kept = sum(array.nbytes for array in (*arrays, small.transitions, small.factors))
    assert kept < 20e6 and (whole.codes[: small.states] == small.codes).all()


def test_somebody_who_says_stop_is_obeyed_and_told_how_far_it_is() -> None:
    heard: list[tuple[str, int]] = []

    def keep_going(what: str, done: int, of: int) -> bool:
        heard.append((what, done))
        return len(heard) < 3

    space = explore(lantern_row(14, 6, 8), Budget(keep_going=keep_going))
    assert isinstance(space, StateSpace)
    assert not space.complete and space.expanded == heard[-1][1] > 0


def test_backward_passes_stop_when_told_to() -> None:
    space = explore(lantern_row(5, 3, 4))
    assert isinstance(space, StateSpace)
    hurried = Study(space, Patience(Budget(keep_going=lambda what, done, of: False)))
    with pytest.raises(StoppedError):
        hurried.to_end  # noqa: B018 -- worked out when asked for
    study = Study(space)
    with pytest.raises(StoppedError):
        distances(space, study.back, study.ended, patience=hurried.patience)
    with pytest.raises(StoppedError):
        longest_line(_forward_only(), hurried.patience)


def _forward_only() -> StateSpace:
    from tests.check.cases import last_targets

    space = explore(last_targets(tie_rule=True))
    assert isinstance(space, StateSpace) and not np.any(space.sources() == space.targets)
    return space


def test_the_check_says_what_it_did_not_come_to() -> None:
    seen: list[str] = []

    def keep_going(what: str, done: int, of: int) -> bool:
        seen.append(what)
        return what == "situations looked into"

    result = check(lantern_row(5, 3, 4), Budget(keep_going=keep_going))
    assert result.space is not None and result.space.complete
    [finding] = [finding for finding in result.findings if finding.code == "C-unfinished"]
    assert "dead ends" not in finding.title and "side that holds the round up" in finding.title
    assert result.facts is not None and result.facts.ends_surely is None and result.facts.shortest is None
    assert result.facts.states == result.space.states
    assert len(seen) > 1
