"""What a forecast rests on is told in French, too: what each norm is about, its rows, its units; and all skills."""

from __future__ import annotations

import library
from compose.staging.resolved import resolved
from compose.telling.wording import wording_of
from tests.fit.playing_games import library_games

READ_BY_A_FORECAST = ("aim", "pace", "catch", "players")


def test_every_norm_of_a_forecast_has_its_french() -> None:
    wording = wording_of("fr")
    read = [table for name, table in library.norms().tables.items() if name.split()[0] in READ_BY_A_FORECAST]
    words = {word for table in read for word in (table.about, table.unit, *table.rows)} - {"m", "s", "m/s"}
    untold = {word for word in words if not (wording.known("norm", word) or wording.known("skill", word))}
    assert words and untold == set()


def test_every_skill_that_a_game_practises_has_its_french() -> None:
    skills = {skill for game in library_games().values() for skill in resolved(game).facts.skills}
    assert skills and {skill for skill in skills if not wording_of("fr").known("skill", skill)} == set()
