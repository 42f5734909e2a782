"""Conditions on matrices, and states and conditions in words."""

from __future__ import annotations

import attrs
import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from compose.check.condition import clauses, holds, places_read
from compose.net.net import All, AnyOf, Comparison, Condition, Net, Not, Place, Shift
from compose.telling.english.conditions import condition_in_words
from compose.telling.english.states import state_in_words
from grammar.core.values import AreaId, At, KindId, Landmark, Posture, Presence, SideId, Spot
from grammar.finding import Severity
from tests.benchmarks.lantern_net import lantern_row
from tests.check.brute import true
from tests.check.build import Builder, rule
from tests.check.cases import told
from tests.check.random_nets import CONDITIONS, PLACES


@given(condition=CONDITIONS, rows=st.lists(st.tuples(*[st.integers(0, 3)] * PLACES), min_size=1, max_size=5))
@settings(max_examples=200, deadline=None)
def test_condition_on_a_matrix_as_on_each_row(condition: Condition, rows: list[tuple[int, ...]]) -> None:
    assert holds(condition, np.array(rows, dtype=np.int32)).tolist() == [true(condition, row) for row in rows]


@given(condition=CONDITIONS, row=st.tuples(*[st.integers(0, 3)] * PLACES))
@settings(max_examples=100, deadline=None)
def test_clauses_and_places(condition: Condition, row: tuple[int, ...]) -> None:
    assert all(true(clause, row) for clause in clauses(condition)) == true(condition, row)
    read = places_read(condition)
    changed = tuple(count if place in read else 3 - count for place, count in enumerate(row))
    assert true(condition, changed) == true(condition, row)


def test_state_in_words() -> None:
    net = lantern_row(14, 6, 8)
    assert state_in_words(net, net.start()) == (
        "north: 14 players in, 6 lanterns standing, 4 balls in the half; "
        "south: 14 players in, 6 lanterns standing, 4 balls in the half"
    )
    counts = (12, 2, 0, 6, 1, 14, 0, 6, 0, 7)
    assert state_in_words(net, counts) == (
        "north: 12 players in, 2 in the queue, no lanterns standing, 6 down, 1 ball in the half; "
        "south: 14 players in, 6 lanterns standing, 7 balls in the half"
    )
    assert state_in_words(net, counts, frozenset((0, 1))) == "north: 12 players in, 2 in the queue"
    assert state_in_words(net, counts, frozenset()) == "nothing changes"


def test_side_is_named_once() -> None:
    """The side that opens the line is not named again, and nothing else loses a word that is spelled so."""
    herons = SideId("herons")
    queue, half = (At(Spot(of, herons)) for of in (AreaId("heron queue"), Landmark.HALF))
    play = Builder("herons", "pikes")
    play.places = [
        Place("in", "player", 9, 8, "herons", standing=Presence.PLAYING),
        Place("queue", "player", 9, 0, "herons", standing=queue),
        Place("up", "target", 9, 3, "herons", "herons stone", standing=Posture.UP),
        Place("down", "target", 9, 0, "herons", "herons stone", standing=Posture.DOWN),
        Place("half", "ball", 9, 3, "herons", "foam ball", standing=half),
    ]
    told = rule("all of it")
    play.may("moves", *(Shift(place, 1, told) for place in range(5)))
    called = ((KindId("herons stone"), "herons stones"), (KindId("foam ball"), "foam balls"))
    net = attrs.evolve(play.net(), plurals=called)
    assert state_in_words(net, (7, 1, 2, 1, 1)) == (
        "herons: 7 in, 1 in the heron queue, 2 herons stones standing, 1 down, 1 foam ball in the half"
    )
    assert state_in_words(net, (8, 0, 3, 0, 3), frozenset((0, 1))) == "herons: 8 in, none in the heron queue"


def test_condition_in_words() -> None:
    net = lantern_row(14, 6, 8)
    none = Comparison(((1, 2),), "<=", 0)
    lead = Comparison(((1, 2), (-1, 7)), ">=", 1)
    assert condition_in_words(none, net) == "no north lanterns standing"
    assert condition_in_words(lead, net) == "more north lanterns standing than south lanterns standing"
    assert condition_in_words(Comparison(((1, 0),), ">=", 1), net) == "at least 1 north player in"
    assert condition_in_words(Comparison(((-1, 0),), ">=", -3), net) == "at most 3 north players in"
    assert condition_in_words(Not(none), net) == "not no north lanterns standing"
    assert condition_in_words(All((none, AnyOf((lead, none)))), net) == (
        "no north lanterns standing and (more north lanterns standing than south lanterns standing "
        "or no north lanterns standing)"
    )
    told = {(">=", 0): "at least as many", (">=", -1): "at most 1 fewer", ("<=", -1): "fewer"}
    for (relation, bound), much in told.items():
        between = "as" if much.endswith("many") else "than"
        compared = Comparison(((1, 2), (-1, 7)), relation, bound)
        expected = f"{much} north lanterns standing {between} south lanterns standing"
        assert condition_in_words(compared, net) == expected
    level = Comparison(((1, 2), (-1, 7)), "==", 0)
    assert condition_in_words(level, net) == "as many north lanterns standing as south lanterns standing"


def at_once(herons_lose: bool) -> Net:
    """A cairn whose fall decides at once, by a rule; the tie rule of the finish never comes to bear."""
    play = Builder("herons", "pikes")
    result = play.place("result", 0, 2, "result")
    told, win = play.rule("a cairn falls: that side loses"), play.rule("first to two wins")
    for side in play.sides:
        play.place(side, 0, 2, side=side)
        play.may(f"{side} score", play.shift(side, 1, told), side=side)
    tie = play.rule("both at once: a draw", stands_by=True)
    play.may("a cairn falls", play.assign("result", 2 if herons_lose else 0, told))
    play.end("a draw", None, All((play.at_least("herons", 2), play.at_least("pikes", 2))), tie)
    for number, side in enumerate(play.sides, start=1):
        play.end(f"the {side} win by a rule of the game", side, Comparison(((1, result),), "==", number), told)
    for side in play.sides:
        play.end(f"the {side} win", side, play.at_least(side, 2), win)
    return play.net()


def test_the_note_of_who_won_is_never_told_as_a_count() -> None:
    net = at_once(herons_lose=True)
    assert state_in_words(net, (2, 1, 0)) == "the pikes have won by a rule; herons: 1 herons"
    assert state_in_words(net, (2, 0, 0), frozenset((0,))) == "the pikes have won by a rule"
    assert condition_in_words(net.ends[1].guard, net) == "a rule by which the herons win at once"
    said = [text for finding in told(net) for text in (finding.title, finding.hint)]
    assert not any(" result" in text for text in said)


def test_a_tie_rule_that_never_comes_to_bear_is_only_a_note() -> None:
    idle = {finding.title: finding for finding in told(at_once(herons_lose=True)) if finding.code == "C-idle"}
    [(title, finding)] = idle.items()
    assert "both at once" in title and finding.severity is Severity.NOTE and "no harm" in finding.hint


def test_a_side_that_no_rule_lets_win_is_told_in_words() -> None:
    net = at_once(herons_lose=True)
    only_by_rule = attrs.evolve(net, ends=net.ends[:3])
    [finding] = [finding for finding in told(only_by_rule) if finding.code == "C-unwinnable"]
    assert finding.title == "The herons can never win, whatever happens in play."
    assert "nothing that can be tried in this game leads to it" in finding.hint
