"""From attempts to rates: exact values from the error function, what the text says, what is told."""

from __future__ import annotations

from math import exp, isclose, radians, sqrt

import attrs
import numpy as np
import pytest
from scipy.special import erf

import library
from compose.forecast.chances.chances import chances, explain_chances, said_too_much
from compose.net.attempt import Attempt
from compose.staging.norms import LEVELS, Ability
from grammar.finding import Severity
from tests.forecast.one_attempt import RULE, THROW, net_of, told


def value(table: str, name: str, ages: tuple[float, float] = (8.0, 12.0)) -> float:
    """A usual norm for the ages of a plain attempt."""
    return Ability(library.norms()).read(table, name, ages).value


def spread(skill: str, distance: float) -> float:
    """The sideways spread in m of a pupil in a game, in the test's own words."""
    return distance * radians(value("aim across", skill)) * value("aim hurry", "any skill")


def interval(half: float, across: float) -> float:
    return float(erf(half / (across * sqrt(2))))


def test_a_throw_at_a_pin_is_two_intervals() -> None:
    across, up = spread("overarm throw", 6.0), spread("overarm throw", 6.0) * value("aim up", "overarm throw")
    exact = interval(0.121 / 2 + 0.178 / 2, across) * interval(0.381 / 2 + 0.178 / 2, up)
    result = told(THROW)
    assert isclose(result.success, exact, rel_tol=1e-12)
    assert (result.caught, result.missed) == (0.0, 1 - result.success)


def test_a_rate_is_pace_times_share_times_chance() -> None:
    attempt = attrs.evolve(THROW, share=0.4, catchable=True)
    result = told(attempt)
    throwing = value("pace aim", "overarm throw") + value("pace act", "overarm throw")
    seconds = value("pace fetch", "any skill") + throwing
    rates = chances(net_of(attempt), library.norms(), library.kit_names())
    assert rates.dtype == np.float64 and rates.shape == (3,)
    expected = [60 / seconds * 0.4 * chance for chance in (result.success, result.caught, result.missed)]
    assert np.allclose(rates, expected, rtol=1e-12)
    assert isclose(rates.sum(), 60 / seconds * 0.4)


def test_a_roll_has_only_its_width_and_cannot_reach_what_hangs() -> None:
    roll = attrs.evolve(THROW, skill="roll")
    assert isclose(told(roll).success, interval((0.121 + 0.178) / 2, spread("roll", 6.0)), rel_tol=1e-12)
    assert told(attrs.evolve(roll, target="tin on stand")).success == 0.0
    assert told(attrs.evolve(roll, aim="ring", target="hanging hoop")).success == 0.0
    gate = told(attrs.evolve(roll, aim="ring", target="hoop")).success
    assert isclose(gate, interval((0.80 - 0.178) / 2, spread("roll", 6.0)), rel_tol=1e-12)


def test_a_round_target_is_a_disc_and_a_ring_is_passed_clean() -> None:
    across = spread("overarm throw", 6.0)
    disc = told(attrs.evolve(THROW, target="wall target")).success
    assert isclose(disc, 1 - exp(-((0.35 + 0.089) ** 2) / (2 * across**2)), rel_tol=1e-12)
    ring = told(attrs.evolve(THROW, aim="ring", target="hoop")).success
    assert isclose(ring, 1 - exp(-((0.40 - 0.089) ** 2) / (2 * across**2)), rel_tol=1e-12)


def test_the_nets_own_sizes_win_over_the_kit() -> None:
    named = attrs.evolve(THROW, width_m=0.5, height_m=0.7)
    across = spread("overarm throw", 6.0)
    assert isclose(told(named).success, interval(0.339, across) * interval(0.439, across), rel_tol=1e-12)


def test_a_throw_at_a_player_is_caught_dodged_or_hits() -> None:
    attempt = attrs.evolve(THROW, aim="player", target=None, catchable=True)
    across = spread("overarm throw", 6.0)
    width, height = value("players width", "body"), value("players height", "body")
    reached = interval(width / 2 + 0.089, across) * interval(height / 2 + 0.089, across)
    caught, dodged = value("catch throw", "middle"), value("players dodge", "player")
    result = told(attempt)
    assert isclose(result.caught, reached * caught, rel_tol=1e-12)
    assert isclose(result.success, reached * (1 - caught) * (1 - dodged), rel_tol=1e-12)
    assert isclose(result.missed, 1 - reached + reached * (1 - caught) * dodged, rel_tol=1e-12)


def test_a_catch_counts_only_where_the_rules_do_something_with_it() -> None:
    attempt = attrs.evolve(THROW, aim="player", catchable=True)
    with_catches, without = told(attempt), told(attempt, ("success", "missed"))
    assert without.caught == 0.0
    assert without.success > with_catches.success
    assert told(attrs.evolve(attempt, catchable=False)).caught == 0.0


def test_a_guard_may_catch_a_throw_at_a_thing() -> None:
    plain, guarded = told(THROW), told(attrs.evolve(THROW, catchable=True))
    share = value("catch throw", "middle") * value("catch reach", "any skill")
    assert isclose(guarded.caught, share, rel_tol=1e-12)
    assert isclose(guarded.success, (1 - share) * plain.success, rel_tol=1e-12)


def test_a_missed_ball_leaves_the_court_only_where_the_rules_speak_of_it() -> None:
    stays, leaves = told(THROW), told(THROW, ("success", "missed", "left"))
    assert (stays.left, leaves.success) == (0.0, stays.success)
    assert isclose(leaves.left, stays.missed * value("aim leaves", "any skill"))
    assert isclose(leaves.left + leaves.missed, stays.missed)


def test_a_pass_must_arrive_and_be_caught() -> None:
    attempt = Attempt("pass on", "pass", "volleyball", "mate", distance_m=4.0)
    across = spread("pass", 4.0)
    width, height = value("players width", "receiver"), value("players height", "receiver")
    reached = interval((width + 0.21) / 2, across) * interval((height + 0.21) / 2, across)
    result = told(attempt, ("success", "missed"))
    assert isclose(result.success, reached * value("catch pass", "large"), rel_tol=1e-12)
    fetched = value("pace fetch", "any skill") * result.missed
    assert isclose(result.per_minute, 60 / (fetched + value("pace aim", "pass") + value("pace act", "pass")))


def test_a_line_is_crossed_past_its_guards() -> None:
    gap = attrs.evolve(THROW, skill="roll", aim="line", target=None, width_m=1.2)
    past = value("pace line", "past")
    assert isclose(told(gap).success, past * interval(0.6, spread("roll", 6.0)), rel_tol=1e-12)
    assert isclose(told(attrs.evolve(gap, width_m=0.0)).success, past, rel_tol=1e-12)


def test_an_aim_at_nothing_always_comes_off() -> None:
    assert told(attrs.evolve(THROW, aim="none", target=None), ("success", "missed")).success == 1.0


@pytest.mark.parametrize(
    ("said", "caught", "expected"),
    [(0.4, 0.2, 0.2), (0.4, None, None), (1.0, None, 0.0), (0.0, 1.0, 1.0)],
)
def test_what_the_text_says_wins(said: float, caught: float | None, expected: float | None) -> None:
    attempt = attrs.evolve(THROW, said_chance=said, said_catch=caught, catchable=True, age_years=(10.0, 11.0))
    norm_share = value("catch throw", "middle", (10.0, 11.0)) * value("catch reach", "any skill")
    result = told(attempt)
    assert result.success == said
    assert isclose(result.caught, (1 - said) * norm_share if expected is None else expected)
    assert not any(reading.table.startswith("aim") for reading in result.readings)


def test_a_said_catch_leaves_the_rest_to_the_model() -> None:
    attempt = attrs.evolve(THROW, said_catch=0.25)
    assert isclose(told(attempt).success, 0.75 * told(THROW).success)
    assert told(attempt).caught == 0.25


def test_a_said_pace_wins() -> None:
    attempt = attrs.evolve(THROW, said_per_minute=3.5, said_chance=0.5)
    result = told(attempt, ("success", "missed"))
    assert (result.per_minute, result.said) == (3.5, ("chance to succeed", "attempts a minute"))
    assert result.readings == ()


def test_shares_above_one_are_a_finding_and_never_a_rate() -> None:
    attempt = attrs.evolve(THROW, said_chance=0.7, said_catch=0.5)
    (finding,) = said_too_much(net_of(attempt))
    assert (finding.severity, finding.place) == (Severity.ERROR, RULE.span)
    with pytest.raises(ValueError, match="exceed 1"):
        chances(net_of(attempt), library.norms(), library.kit_names())
    assert said_too_much(net_of(attrs.evolve(attempt, said_catch=0.3))) == ()


def test_an_outcome_that_always_happens() -> None:
    run = Attempt("back to base", "run", None, "none", distance_m=10.0)
    (rate,) = chances(net_of(run, ("always",)), library.norms(), library.kit_names())
    assert isclose(rate, 60 / (value("pace turn", "run") + 10.0 / value("running speed", "with turns")))
    with pytest.raises(ValueError, match="beside others"):
        chances(net_of(run, ("always", "missed")), library.norms(), library.kit_names())
    with pytest.raises(KeyError):
        chances(net_of(run, ("sometimes",)), library.norms(), library.kit_names())


def test_a_load_slows_the_way() -> None:
    tow = Attempt("tow", "tow", None, "none", distance_m=10.0)
    speed = value("running speed", "with turns") * value("running load", "tow")
    assert isclose(told(tow, ("always",)).per_minute, 60 / (value("pace turn", "tow") + 10.0 / speed))


def test_a_skill_the_norms_do_not_know_has_the_documented_pace() -> None:
    result = told(Attempt("ring a bell", "ringing", None, "none"), ("success", "missed"))
    assert isclose(result.per_minute, 60 / value("pace turn", "anything else"))
    assert result.success == 1.0
    assert all(reading.assumed for reading in result.readings)


def test_moving_without_a_ball_has_its_own_chance() -> None:
    result = told(Attempt("touch", "touch", None, "player"), ("success", "missed"))
    assert result.success == value("pace success", "touch")


def test_what_the_kit_does_not_know_is_told_as_an_assumption() -> None:
    result = told(Attempt("throw", "overarm throw", "moon rock", "target", "dragon", distance_m=5.0))
    unknown = {reading.name for reading in result.readings if reading.table == "space unknown"}
    assert unknown == {"ball diameter", "target width", "target height"}
    ring = told(Attempt("throw", "overarm throw", "foam ball", "ring", "dragon", distance_m=5.0))
    assert "ring diameter" in {reading.name for reading in ring.readings}


def test_an_explanation_names_its_norms_and_sources() -> None:
    result = told(attrs.evolve(THROW, age_years=(12.0, 13.0)))
    readings = {reading.table: reading for reading in result.readings}
    aims = {"aim across", "aim hurry", "aim up", "aim nearest"}
    assert set(readings) == aims | {"pace fetch", "pace aim", "pace act"}
    assert "Studia sportiva" in str(readings["aim across"].sources[0])
    assert readings["aim hurry"].assumed
    assert all(reading.why for reading in readings.values())


def test_one_assumption_can_be_moved_alone() -> None:
    net, norms, kit = net_of(THROW, ("success",)), library.norms(), library.kit_names()
    (usual,) = chances(net, norms, kit)
    (slower,) = chances(net, norms, kit, instead={"pace fetch": "high"})
    (wilder,) = chances(net, norms, kit, instead={"aim across": "high"})
    assert slower < usual and wilder < usual


def test_an_abler_class_hits_still_targets_more_and_sooner() -> None:
    net, norms, kit = net_of(THROW, ("success",)), library.norms(), library.kit_names()
    rates = [chances(net, norms, kit, level)[0] for level in LEVELS]
    assert rates == sorted(rates) and rates[0] < rates[2]


def test_equal_attempts_of_both_sides_share_one_explanation() -> None:
    net = net_of(THROW, ("success", "missed"))
    twice = attrs.evolve(net, transitions=net.transitions * 2)
    rates = chances(twice, library.norms(), library.kit_names())
    assert len(explain_chances(twice, library.norms(), library.kit_names())) == 1
    assert list(rates[:2]) == list(rates[2:])
