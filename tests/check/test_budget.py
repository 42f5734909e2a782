"""Budgets: states, memory, and somebody who says stop; what is known by then is still told."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from compose.check import Budget, StateSpace, check, explore
from compose.check.graph import distances, longest_line
from compose.check.patience import Patience, StoppedError
from compose.check.space import USUAL
from compose.check.study import Study
from compose.net.net import Rule
from compose.telling.english.findings import findings_told
from compose.terminal.typed.looking_options import USUAL_MEGABYTES, USUAL_STATES
from grammar.frozen import evolve
from grammar.span import nowhere
from tests.benchmarks.lantern_net import lantern_row
from tests.check.build import Builder


def test_memory_is_a_budget_of_its_own() -> None:
    net = lantern_row(14, 6, 8)
    small = explore(net, Budget(megabytes=5.0))
    whole = explore(net)
    assert isinstance(small, StateSpace) and isinstance(whole, StateSpace)
    assert not small.complete and whole.complete
    arrays = (small.codes, small.end_of, small.clash_of, small.parents, small.by, small.offsets, small.targets)
    kept = sum(array.nbytes for array in (*arrays, small.transitions, small.factors))
    assert kept < 20e6 and (whole.codes[: small.states] == small.codes).all()


def test_many_moves_out_of_each_situation_do_not_run_over_the_budget() -> None:
    """Four counts that each move raises by 0 to 3: all that wait, looked into at once, take twice the budget."""
    play = Builder("north", "south")
    told, names = play.rule("points"), ("one", "two", "three", "four")
    for name in names:
        play.place(name, 0, 90)
    for by in product(range(4), repeat=4):
        shifts = [play.shift(name, each, told) for name, each in zip(names, by, strict=True)]
        play.may(f"by {by}", *shifts)
    play.end("over", "north", play.at_least("one", 90), told)
    space = explore(play.net(), Budget(megabytes=20.0))
    assert isinstance(space, StateSpace) and not space.complete and not space.stopped
    assert 66 * space.edges < 1.5 * 20e6


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
    said = findings_told(result.findings, result.space.net)
    [finding] = [finding for finding in said if finding.code == "C-unfinished"]
    assert "dead ends" not in finding.title and "side that holds the round up" in finding.title
    assert result.facts is not None and result.facts.ends_surely is None and result.facts.shortest is None
    assert result.facts.states == result.space.states
    assert len(seen) > 1


@pytest.mark.parametrize("loop", [False, True])
def test_what_was_seen_is_told_however_much_was_not_looked_at(loop: bool) -> None:
    """A dead end or a loop in the part looked at is proved, with its line of play; nothing absent is claimed."""
    play = Builder("north", "south")
    told = play.rule("points and a trap")
    play.place("trap", 0, 2)
    open_ = play.at_most("trap", 0)
    for name in ("one", "other"):
        play.place(name, 0, 200)
        play.may(f"{name} scores", play.shift(name, 1, told), guard=open_)
    play.may("into the trap", play.shift("trap", 1, told), guard=open_)
    if loop:
        play.may("deeper", play.shift("trap", 1, told), guard=play.exactly("trap", 1))
        play.may("back", play.shift("trap", -1, told), guard=play.exactly("trap", 2))
    play.end("over", "north", play.at_least("one", 200), told)
    result = check(play.net(), Budget(states=3_000))
    assert result.space is not None and not result.space.complete
    [budget, finding, lost] = findings_told(result.findings, result.space.net)
    codes = (budget.code, finding.code, lost.code)
    assert codes == ("C-budget", "C-endless" if loop else "C-dead-end", "C-unwinnable"), "no end names south"
    assert [step.words for step in finding.witness[1:]] == ["into the trap"]
    assert f"{result.space.expanded:,} situations were looked into" in budget.title
    assert "--states 12000" in str(budget.hint) and result.facts is not None
    assert result.facts.looked == result.space.expanded < result.facts.states


def test_the_same_part_is_looked_at_every_time() -> None:
    one, other = (explore(lantern_row(14, 6, 8), Budget(megabytes=30.0)) for _ in range(2))
    assert isinstance(one, StateSpace) and isinstance(other, StateSpace)
    assert one.expanded == other.expanded and (one.codes == other.codes).all() and not one.stopped


def test_a_stopped_search_says_so() -> None:
    result = check(lantern_row(14, 6, 8), Budget(keep_going=lambda what, done, of: done < 1_000))
    assert result.space is not None and result.space.stopped
    first = findings_told(result.findings, result.space.net)[0]
    assert first.code == "C-unfinished" and "was stopped" in first.title


def test_the_options_are_the_usual_budget() -> None:
    assert (USUAL.states, USUAL.megabytes) == (USUAL_STATES, USUAL_MEGABYTES)


def test_a_rule_to_which_nothing_leads_is_told_of_a_game_too_large_to_look_into() -> None:
    net = lantern_row(14, 6, 8)
    unused = Rule("a ball crosses the back line: the thrower's side scores 1 point", nowhere())
    result = check(evolve(net, rules=(*net.rules, unused)), Budget(states=50))
    told = [found for found in result.findings if found.code == "C-idle"]
    assert [found.place for found in told] == [unused.span]
    assert result.facts is not None and not result.facts.complete
