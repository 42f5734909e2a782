"""Of several rules for one event each does what no rule before it does instead: nothing is lost, nothing done twice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest

from compose.net.lower.dispatch import Case, cases_of
from compose.staging.resolved import resolved
from grammar.core.game import Play
from grammar.core.guards import ALWAYS
from grammar.core.precedence import goes_before, overlap, slots, written
from grammar.core.rules import Nothing, PlayOn, Rule
from tests.interpreter.sheets import game_in, library_game
from tests.interpreter.test_nothing_else_follows import sheet

SPARED = """a cone of north is knocked: play goes on
  a cone of north is knocked by a guard: the thrower's side scores 2 points"""
AS_THEY_STAND = """a player is hit while the other side has 1 player in: that player is out
  a player is hit while a side has at least 1 point: that player waits in the rest queue and north scores 2 points"""
PLAYS = {name: lambda name=name: library_game(name) for name in ("heron-and-pike", "cairn-keepers", "sleet-field")}
PLAYS |= {"spared": lambda: game_in(sheet(SPARED)), "as they stand": lambda: game_in(sheet(AS_THEY_STAND))}


def met(play: Play) -> Iterator[tuple[Rule, Rule]]:
    """Any two rules that one event may fire, in either order."""
    for one in play.rules:
        for other in play.rules:
            if one.lines != other.lines and overlap(one.trigger, other.trigger):
                yield one, other


def check_case(case: Case, rules: Sequence[Rule]) -> None:
    holding = [rule for rule in rules if rule.guard == ALWAYS or rule.guard in case.holds]
    for rule in holding:
        others = [other for other in holding if other is not rule and goes_before(other, rule) is not False]
        for effect in rule.effects:
            if (effect, rule) not in case.effects:
                instead = [o for o in others if written(o) & set(slots(effect)) or nothing_follows(o)]
                assert instead, f"`{rule}` loses {effect} for a rule that does not go before it"
    if not any(goes_on(rule) for rule in holding):
        for slot in {slot for rule in holding for slot in written(rule)}:
            doing = {rule.lines for effect, rule in case.effects if slot in slots(effect)}
            assert len(doing) == 1, slot
            writing = [rule for rule in holding if slot in written(rule)]
            if all(goes_before(one, other) is None for one in writing for other in writing if one is not other):
                assert doing == {min(rule.lines for rule in writing)}, "else the order of the sheet decides"


def nothing_follows(rule: Rule) -> bool:
    return any(isinstance(effect, Nothing) for effect in rule.effects)


def goes_on(rule: Rule) -> bool:
    """Whether play just goes on after it: anything said of the same event stands instead."""
    return any(isinstance(effect, Nothing | PlayOn) for effect in rule.effects)


@pytest.mark.parametrize("name", PLAYS)
def test_each_rule_does_what_none_before_it_does(name: str) -> None:
    play = resolved(PLAYS[name]()).play
    assert not play.counting
    pairs = list(met(play))
    assert pairs
    for pair in pairs:
        for case in cases_of(play, pair):
            check_case(case, pair)
