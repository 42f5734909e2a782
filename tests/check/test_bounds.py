"""Bounds of every count against all situations of random nets and of drawn games: what bounds say can never be is
never there. The method is that of P. Cousot and R. Cousot, "Abstract interpretation", POPL 1977 (from memory)."""

from __future__ import annotations

from random import Random

import pytest
from attrs import evolve
from hypothesis import given, settings

import library
from compose.check import check, explore
from compose.check.bounds import bounds
from compose.check.findings.idle import idle
from compose.check.findings.unseen import unseen
from compose.check.findings.unwinnable import unwinnable
from compose.check.seen import everywhere
from compose.check.space import Budget, StateSpace
from compose.check.study import Study
from compose.net.from_game import net_of
from compose.net.net import All, Condition, Net, Rate, Shift
from compose.telling.english.findings import findings_told
from grammar.resolve import resolve
from tests.check.build import Builder
from tests.check.random_nets import CONDITIONS, nets, rates
from tests.interpreter.drawn_readings import Drawn
from tests.interpreter.sheets import granted
from tests.seed import SEED


def study_of(net: Net) -> Study | None:
    """All situations of a net; None where there are many."""
    space = explore(net, Budget(states=3_000))
    return Study(space) if isinstance(space, StateSpace) and space.complete else None


def kept_to(net: Net) -> bool:
    """Whether all that play does keeps to the bounds; and whether what they prove idle or lost is found in full."""
    study = study_of(net)
    if study is None:
        return False
    known = bounds(net)
    assert (study.table >= known.least).all() and (study.table <= known.most).all()
    for (_, done), (_, may) in zip(everywhere(study).acts, known.acts, strict=True):
        assert may.fired or not done.fired
        assert all(one or not other for one, other in zip(may.changed, done.changed, strict=True))
    never = {span for found in unseen(net) for span in (found.place, *found.others) if span.line}
    full = (*idle(study), *unwinnable(study))
    assert never <= {span for found in full for span in (found.place, *found.others)} | {
        end.rule.span for end in net.ends
    }
    return True


@given(net=nets())
@settings(max_examples=300, deadline=None)
def test_no_situation_is_out_of_bounds(net: Net) -> None:
    kept_to(net)


@given(net=nets(), asked=CONDITIONS)
@settings(max_examples=200, deadline=None)
def test_what_holds_somewhere_may_hold_within_bounds(net: Net, asked: Condition) -> None:
    study = study_of(net)
    assert study is None or bounds(net).ever(asked) or not everywhere(study).ever(asked)


@given(net=nets(), more=rates())
@settings(max_examples=8, deadline=None)
def test_what_needs_something_that_is_never_there_is_never_done(net: Net, more: Rate) -> None:
    """Whatever else is asked, and wherever play comes to."""
    nothing, never = (
        evolve(net.places[0], name=name, start=0, capacity=3) for name in ("nothing", "what would come of it")
    )
    without, there = len(net.places), len(net.places) + 1
    rate = evolve(more, limits=(*more.limits, (without,)))
    act = evolve(net.transitions[0], rate=rate, effects=(Shift(there, 1, net.rules[0]),), guard=All())
    known = bounds(evolve(net, places=(*net.places, nothing, never), transitions=(*net.transitions, act)))
    assert known.most[there] == 0
    assert [done.fired for each, done in known.acts if each is act] == [False]


@pytest.mark.parametrize("number", Random(SEED).sample(range(1_000_000), 8))
def test_no_drawn_game_leaves_its_bounds(number: int) -> None:
    game = Drawn(number)
    resolved = resolve(game.tree, library.kit_categories()).value
    assert resolved is not None
    net = net_of(resolved, granted(), game.players).value
    assert net is not None
    kept_to(net)


def far_too_many(needed: int, taken: bool) -> Net:
    """Twenty heaps of 200 that players may take from, and two sides of which one needs so many of what is kept."""
    play = Builder("north", "south")
    told, kept = play.rule("take what lies there"), play.rule("take what is kept")
    for number in range(20):
        play.place(f"heap {number}", 200, 200)
        play.may(f"take {number}", play.shift(f"heap {number}", -1, told))
    play.place("kept", 3, 10)
    play.may("keep", play.shift("kept", 1, kept), guard=play.at_least("kept", 3 if taken else 4))
    play.end("enough", "north", play.at_most("heap 0", 0), play.rule("north wins"))
    play.end("kept", "south", play.at_least("kept", needed), play.rule("south wins"))
    return play.net()


@pytest.mark.parametrize(("needed", "taken", "codes"), [(10, True, []), (10, False, ["C-unwinnable", "C-idle"])])
def test_what_can_never_be_is_told_of_a_game_too_large_to_look_at(needed: int, taken: bool, codes: list[str]) -> None:
    net = far_too_many(needed, taken)
    result = check(net)
    assert result.space is None
    too_large, *found = findings_told(result.findings, net)
    assert (too_large.code, [each.code for each in found]) == ("C-too-large", codes)
    assert all("there are never" in str(each.hint).lower() for each in found)
