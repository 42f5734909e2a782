"""Rules of thumb of the trade, held against the library's games, with 24 pupils.

Every value here is common practice and has no source: what teachers of hall games say to one another. Where a game
keeps to another value, OTHERWISE says why, so that a departure is a choice and not a slip; a game that has come to
keep to it must leave that list.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

import library
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.check import Budget
from compose.staging.resolved import resolved
from compose.staging.staging import stage
from compose.staging.teams import teams_of
from compose.terminal.typed.finding_games import game
from grammar.core.area_kind import AreaKind
from grammar.core.game import Play
from grammar.core.guards import Compare, Either, Every, PlayersAt, Points, Relation
from grammar.core.rules import AllHold
from grammar.core.values import At, Sort

GAMES = [path.stem for path in library.game_paths()]
PUPILS, AGES = 24, (8, 12)
MOST_HELD_S = 10  # common practice: a ball is kept at most ten seconds
MOST_A_ROW = 6  # common practice: rows of five or six targets a side
MOST_GUARDS = 1  # common practice: at most one guard for each target
ON_THE_BENCH = 5  # common practice: five across on the bench win
TO_POINTS = range(5, 11)  # common practice: play to five or ten points, or between
ALL_HOLD_S = 5  # common practice: when everyone holds a ball for five seconds, all change
FIRST_BALLS = 2  # common practice: one or two balls to begin with in a rolling game, a third later
MOST_IDLE = 0.5  # common practice: nobody waits for most of the round
OTHERWISE = {  # our choice of each game, with why it departs
    ("toll-stone", "held"): "one ball each of two who play alone: nobody else waits for it",
    ("sledge-road", "guards"): "a guard walks beside a carrier, and two may: the log moves",
    ("homestead", "row"): "one chimney for each player, not a row",
    ("beck-gates", "points"): "a miss costs a point, so points come fast: 25 take as long as 10 elsewhere",
    ("crag-row", "points"): "what stands further off counts more: up to 4 points at once",
    ("ember-minute", "points"): "points count double in the last minute",
    ("otter-reeds", "row"): "cones along both side lines, not a row",
    ("weir-ball", "points"): "whoever scores gives the ball away, so goals are few",
    ("cloud-drift", "points"): "a point is nine steps of 1 m: two of them take 3.5 min",
}


def departures(stem: str) -> Iterator[tuple[str, object]]:
    """Each rule of thumb that a game departs from, with the value that it has."""
    play = resolved(game(stem)).play
    yield from (("held", float(hold.limit_s)) for hold in play.holds if hold.limit_s > MOST_HELD_S)
    yield from (("guards", each.most) for each in play.guarding if each.most > MOST_GUARDS)
    for supply in play.supplies:
        if play.kind(supply.thing.kind).sort is Sort.TARGET and supply.count > MOST_A_ROW:
            yield "row", supply.count
    triggers = [rule.trigger for rule in play.rules if isinstance(rule.trigger, AllHold)]
    yield from (("all hold", float(each.time_s)) for each in triggers if each.time_s != ALL_HOLD_S)
    for compared in compares(play):
        if isinstance(compared.count, Points) and compared.bound not in TO_POINTS:
            yield "points", compared.bound
        if on_a_bench(play, compared) and compared.bound != ON_THE_BENCH:
            yield "bench", compared.bound


def compares(play: Play) -> Iterator[Compare]:
    """Each count that ends the round when it is reached."""
    waiting = [end.guard for end in play.ends]
    while waiting:
        guard = waiting.pop()
        if isinstance(guard, Every | Either):
            waiting.extend(guard.parts)
        elif isinstance(guard, Compare) and guard.relation is Relation.AT_LEAST:
            yield guard


def on_a_bench(play: Play, compared: Compare) -> bool:
    if not isinstance(compared.count, PlayersAt):
        return False
    areas = (play.area(at.spot) for at in compared.count.at if isinstance(at, At))
    return any(area is not None and area.kind is AreaKind.BENCH for area in areas)


@pytest.mark.parametrize("stem", GAMES)
def test_game_keeps_to_the_rules_of_thumb_or_says_why_not(stem: str) -> None:
    departed = {rule for rule, _ in departures(stem)}
    known = {rule for name, rule in OTHERWISE if name == stem}
    assert departed == known, dict(departures(stem))


def test_rolling_game_begins_with_one_or_two_balls() -> None:
    play = resolved(game("millrace-roll")).play
    balls = sum(each.count for each in play.supplies if play.kind(each.thing.kind).sort is Sort.BALL)
    assert balls <= FIRST_BALLS


IN_TURN = ("fell-couriers",)  # a relay, of which one of a side runs: the others wait, as many as a side has
IDLE_IN_TURN = 5 / 6  # of sides of six, common practice for as many as may stand in a row


def for_pupils() -> Iterator[str]:
    """The games that so many pupils of these ages can play with nobody over."""
    for stem in GAMES:
        ages = game(stem).ages_years
        if ages[0] <= AGES[1] and ages[1] >= AGES[0] and teams_of(game(stem), PUPILS).over == 0:
            yield stem


@pytest.mark.sample(3)
@pytest.mark.parametrize("stem", list(for_pupils()))
def test_game_ends_within_the_lesson_and_nobody_waits_for_most_of_it(stem: str) -> None:
    """A whole game, of all its rounds or halves, is over in the minutes that a usual lesson leaves for play."""
    norms, kit, budget = library.norms(), library.kit_names(), Budget(20_000)
    staging = stage(game(stem), norms, kit, teams=teams_of(game(stem), PUPILS))
    made = staged(staging, library.granted_sheet()).value
    assert made is not None
    answer = foreseen(proved(made, budget), norms, kit, budget=budget)
    assert answer.numbers is not None and answer.odds is not None
    assert answer.odds.minutes <= staging.lesson.play
    assert answer.numbers.idle.value <= MOST_IDLE or (stem in IN_TURN and answer.numbers.idle.value <= IDLE_IN_TURN)
