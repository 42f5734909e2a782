"""The breaks between rounds count where there is time for more than one round, and for no other."""

from __future__ import annotations

import attrs
import pytest

import library
from compose.forecast.assumptions import ages_of
from compose.forecast.forecast import forecast
from compose.forecast.rounds.simulate import Play
from compose.staging.minutes import lesson_of
from tests.check.chance_games import race


@pytest.mark.parametrize("points", [2, 200])
def test_how_long_a_break_is_matters_where_there_is_one(points: int) -> None:
    net = race(points, 1.0, 1.0).net
    usual = lesson_of(library.norms(), ages_of(net))
    lesson = attrs.evolve(usual, minutes=usual.minutes / 2)
    shares = []
    for again in (0.5, 3.0):
        found = forecast(net, library.norms(), library.kit_names(), lesson=attrs.evolve(lesson, again=again),
                         play=Play(rounds=2, batch=2), compare=False)  # fmt: skip
        assert found is not None and (found.course.length.mean.value < lesson.play) == (points == 2)
        shares.append(found.active.usual)
    assert (shares[0] != shares[1]) == (points == 2)
