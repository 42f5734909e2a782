"""From rounds to matches: best of n against closed forms, halves against counting by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import attrs
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import library
from compose.check import StateSpace, check, explore
from compose.check.match import can_win
from compose.check.study import Study
from compose.forecast.chain.exact import exact_course
from compose.forecast.course import Course
from compose.forecast.matches import best_of, game_odds
from compose.forecast.rounds.simulate import Play
from compose.forecast.work import Work
from compose.net.match import ONE_ROUND, Match, match_of
from compose.net.net import Net
from compose.staging.resolved import resolved
from tests.check.build import Builder
from tests.check.cases import bell
from tests.interpreter.sheets import library_game


@pytest.mark.parametrize(
    ("rounds", "chance", "win", "mean"),
    [
        (3, Fraction(3, 5), Fraction(81, 125), Fraction(62, 25)),
        (5, Fraction(3, 5), Fraction(2133, 3125), Fraction(2541, 625)),
        (7, Fraction(3, 5), Fraction(11097, 15625), Fraction(17804, 3125)),
        (7, Fraction(1, 2), Fraction(1, 2), Fraction(93, 16)),
        (1, Fraction(1, 3), Fraction(1, 3), Fraction(1)),
    ],
)
def test_best_of_an_odd_number(rounds: int, chance: Fraction, win: Fraction, mean: Fraction) -> None:
    """Computed from the sum over who wins the last round (problem of points, 1654)."""
    wins, drawn, played = best_of(rounds, (float(chance), 1 - float(chance)))
    assert wins == pytest.approx([float(win), 1 - float(win)], abs=1e-12)
    assert drawn == pytest.approx(0.0, abs=1e-12) and played == pytest.approx(float(mean), abs=1e-12)


@given(
    rounds=st.integers(1, 5),
    parts=st.lists(st.integers(0, 5), min_size=3, max_size=4).filter(lambda parts: sum(parts) > 0),
)
@settings(max_examples=40, deadline=None)
def test_best_of_as_by_writing_out_every_match(rounds: int, parts: list[int]) -> None:
    """The last part stands for drawn rounds; stopping early changes no winner."""
    chances = [part / sum(parts) for part in parts]
    wins, drawn = np.zeros(len(parts) - 1), 0.0
    for results in product(range(len(parts)), repeat=rounds):
        likely = float(np.prod([chances[result] for result in results]))
        won = [results.count(side) for side in range(len(parts) - 1)]
        if won.count(max(won)) == 1:
            wins[won.index(max(won))] += likely
        else:
            drawn += likely
    found, level, mean = best_of(rounds, chances[:-1])
    assert found == pytest.approx(wins, abs=1e-12) and level == pytest.approx(drawn, abs=1e-12)
    assert 0 < mean <= rounds + 1e-12 and found.sum() + level == pytest.approx(1.0)


def one_point(match: Match) -> Net:
    """The slaters come to one point in the end, a minute after the start in the mean."""
    play = Builder("slaters", "masons")
    play.place("slaters", 0, 1)
    told = play.rule("first to one")
    play.may("a point", play.shift("slaters", 1, told))
    play.end("slaters win", "slaters", play.at_least("slaters", 1), told)
    return play.net(match=match)


def course_of(net: Net, pace: float = 0.5) -> Course:
    space = explore(net)
    assert isinstance(space, StateSpace)
    return exact_course(space, (pace,), 30.0)


def test_matches_are_read_from_the_game() -> None:
    found = {path.stem: match_of(resolved(library_game(path.stem))) for path in library.game_paths()}
    assert found["quarry-row"].best_of == 3 and found["quarry-row"].lines == ("best of 3 rounds",)
    assert found["sledge-road"].halves and found["sledge-road"].tasks_change and found["sledge-road"].best_of == 1
    assert found["toll-stone"].most_rounds == 3 and found["lantern-row"] == ONE_ROUND


def test_a_match_takes_its_rounds() -> None:
    net = one_point(Match(best_of=3))
    told = game_odds(net, course_of(net))
    assert dict(told.wins)["slaters"].value == pytest.approx(1.0) and told.rounds == pytest.approx(2.0)
    assert told.minutes == pytest.approx(2.0 * 2)
    net = one_point(Match(best_of=3, halves=True))
    assert game_odds(net, course_of(net)).minutes == pytest.approx(2.0 * 2 * 2)


@pytest.mark.parametrize(("change", "slaters", "level"), [(True, 0.0, 1.0), (False, 1.0, 0.0)])
def test_halves_without_points_go_by_halves_won(change: bool, slaters: float, level: float) -> None:
    """The slaters win each half: whoever changes tasks wins one each, whoever keeps them wins both."""
    net = one_point(Match(halves=True, tasks_change=change))
    told = game_odds(net, course_of(net))
    assert dict(told.wins)["slaters"].value == pytest.approx(slaters) and told.drawn.value == pytest.approx(level)
    study = Study(explore(net))  # type: ignore[arg-type]
    # The proof asks for what is possible, and a half that is never won has but one result.
    assert can_win(study) == (() if change else ("slaters",))


def test_halves_by_points() -> None:
    """Runners get 0, 1 or 2 points, fielders none: the lead over both halves is the difference of two halves."""
    play = Builder("runners", "fielders")
    play.place("runners", 0, 2, side="runners")
    play.place("fielders", 0, 2, side="fielders")
    told = play.rule("points")
    play.may("a point", play.shift("runners", 1, told), guard=play.at_most("runners", 1))
    match = Match(halves=True, tasks_change=True)
    net = play.net(bell(play, after_s=60.0), open_ended=True, match=match)
    course = course_of(net, 1.0)
    none, one = np.exp(-1.0), np.exp(-1.0)
    chances = np.array([none, one, 1 - none - one])
    assert course.points[0] == pytest.approx(chances, abs=1e-9)
    odds = game_odds(net, course)
    level = float((chances**2).sum())
    assert odds.drawn.value == pytest.approx(level, abs=1e-9)
    assert [chance.value for _, chance in odds.wins] == pytest.approx([(1 - level) / 2] * 2, abs=1e-9)
    assert odds.minutes == pytest.approx(2.0)
    faster = course_of(net, 3.0)
    uneven = [chance.value for _, chance in game_odds(net, course, faster).wins]
    assert uneven[1] > uneven[0] > 0
    other = faster.points[0]
    ahead = sum(chances[mine] * other[theirs] for mine in range(3) for theirs in range(mine))
    assert uneven[0] == pytest.approx(ahead, abs=1e-9)
    kept = game_odds(attrs.evolve(net, match=attrs.evolve(match, tasks_change=False)), course)
    assert dict(kept.wins)["runners"].value == pytest.approx(1 - none**2, abs=1e-9)
    rounds = game_odds(attrs.evolve(net, match=Match(halves=True, parts=5, of_rounds=True)), course)
    assert dict(rounds.wins)["runners"].value == pytest.approx(1 - none**5, abs=1e-9) and rounds.rounds == 5
    assert dict(kept.wins)["fielders"].value == 0


@pytest.mark.parametrize("change", [True, False])
def test_a_group_can_win_both_halves_exactly_where_its_odds_are_not_nought(change: bool) -> None:
    """Only the runners score: the fielders can win where each group is runners once."""
    play = Builder("runners", "fielders")
    for side in ("runners", "fielders"):
        play.place(side, 0, 2, side=side)
    play.may("a point", play.shift("runners", 1, play.rule("points")), guard=play.at_most("runners", 1))
    match = Match(halves=True, tasks_change=change)
    net = play.net(bell(play, after_s=60.0), open_ended=True, match=match)
    told = game_odds(net, course_of(net))
    possible = tuple(side for side, chance in told.wins if chance.value > 0)
    result = check(net)
    assert result.facts is not None and result.facts.can_win == possible
    assert ("C-unwinnable" in {each.code for each in result.findings}) is not change


@pytest.mark.parametrize("asked", range(4))
def test_both_halves_are_compared_unless_somebody_stops_one(asked: int) -> None:
    """Each asks once before its rounds are played."""
    left = [True] * asked
    play = Play(rounds=8, batch=8, keep_going=lambda *_: bool(left) and left.pop())
    net = one_point(Match(halves=True, tasks_change=True))
    both = Work(net, library.norms(), library.kit_names(), None, play, net)
    assert (both.compared("low") is not None) == (asked >= 2)
