"""A value that is lost is seen: without it, something else is read back; and each side is spoken of alike."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from attrs import evolve
from told_games import ALONE, COINS, FOUR, GREEN, PASSES, SLEDGES, TRACK
from told_sheets import core_in, row

from compose.telling.granted import can_happen, rests_left
from compose.telling.orbit import alike_for_each, mirrored
from compose.telling.read_back import read_back
from compose.telling.wording import ENGLISH, wording_of
from grammar.core.game import Core
from grammar.core.rules import Rest, Rule
from library.load import game_paths
from tests.interpreter.sheets import game_in, library_game

NAMES = tuple(path.stem for path in game_paths())
SHEETS = {"row": row(), "alone": ALONE, "coins": COINS, "four": FOUR, "green": GREEN, "passes": PASSES}
SHEETS |= {"sledges": SLEDGES, "track": TRACK}
TOLD = ("areas", "roles", "lives", "supplies", "starts", "homes", "offers", "services", "holds", "guarding")
FIELDS = (*TOLD, "begin_points", "unfetched", "rests", "rules", "counting", "ends", "factors")


def text(core: Core, language: str = "en") -> str:
    wording = ENGLISH if language == "en" else wording_of(language)
    return "\n".join(said.text for section in read_back(core, wording).sections for said in section.said)


def cores() -> Iterator[tuple[str, Core]]:
    yield from ((name, core_in(library_game(name))) for name in NAMES)
    yield from ((name, core_in(game_in(sheet))) for name, sheet in SHEETS.items())


CORES = dict(cores())


def speaks(core: Core, value: object) -> bool:
    """Whether a value has a say in the game: what cannot happen is told only where its line says nothing else."""
    if getattr(value, "granted", False):
        return False
    if isinstance(value, Rule):
        return can_happen(core.play, value)
    return not isinstance(value, Rest) or value in rests_left(core.play)


@pytest.mark.sample(5)
@pytest.mark.parametrize("name", CORES)
@pytest.mark.parametrize("language", ["en", "fr"])
def test_a_value_that_is_lost_is_seen(name: str, language: str) -> None:
    core = CORES[name]
    whole = text(core, language)
    silent = []
    for field in FIELDS:
        values = getattr(core.play, field)
        for value in values:
            if speaks(core, value):
                without = evolve(core.play, **{field: tuple(each for each in values if each is not value)})
                if text(evolve(core, play=without), language) == whole:
                    silent.append(value)
    assert silent == []


@pytest.mark.parametrize("name", [name for name, core in CORES.items() if len(core.play.sides) == 2])
def test_sides_are_exchanged_without_a_difference_where_a_sheet_speaks_of_each(name: str) -> None:
    """A value that is its own mirror image with another one is told once; exchanging twice gives the value itself."""
    play = CORES[name].play
    one, other = play.side_ids
    for value in (*play.offers, *play.rules, *play.starts, *play.ends):
        assert mirrored(mirrored(value, one, other, play), one, other, play) == value
        assert alike_for_each([value, mirrored(value, one, other, play)], play)
