"""Games drawn from a meaning: the second reader plays what the records say, and the net plays what it plays."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import pytest
from attrs import evolve

from tests.interpreter.compare import counted_reading
from tests.interpreter.drawn.expected import broken
from tests.interpreter.drawn_readings import Drawn

GAMES, BATCH = 60, 20  # tests/benchmarks/second_reader.py draws twenty thousand
NUMBERS = range(GAMES)
FORMERLY_OTHERWISE = (1941, 7338, 8789, 8911, 10896, 11591, 17308)  # targets that change sides, all balls held
BATCHES = [*(NUMBERS[at : at + BATCH] for at in range(0, GAMES, BATCH)), FORMERLY_OTHERWISE]
drawn = cache(Drawn)


@pytest.mark.parametrize("numbers", BATCHES, ids=str)
def test_the_second_reader_plays_what_the_records_say(numbers: Sequence[int]) -> None:
    assert not {
        (number, drawn(number).draft.text(), said) for number in numbers if (said := drawn(number).against_records())
    }


@pytest.mark.parametrize("numbers", BATCHES, ids=str)
def test_the_net_plays_what_the_second_reader_plays(numbers: Sequence[int]) -> None:
    """The same states, moves, results and words of the clock; no sound sheet is refused."""
    assert not {
        (number, drawn(number).draft.text(), said) for number in numbers if (said := drawn(number).against_net())
    }


def test_most_games_are_small_enough_to_be_compared() -> None:
    assert sum(drawn(number).found is not None for number in NUMBERS) > 0.8 * GAMES


def test_the_true_order_of_a_queue_only_takes_away() -> None:
    compared = 0
    for game in (drawn(number) for number in NUMBERS):
        if game.order_matters and game.found is not None and game.without_order is not None:
            assert counted_reading(game.rounds, game.found).within(game.without_order), game.draft.text()
            compared += 1
    assert compared


@pytest.mark.parametrize("number", [3, 12])
def test_what_is_forgotten_in_the_records_is_noticed(number: int) -> None:
    game = drawn(number)
    assert game.found is not None and not game.against_records()
    for offer in game.draft.offers - game.draft.later:
        if any(offer.ball == ball for ball, _ in game.draft.begin):
            without = evolve(game.draft, offers=game.draft.offers - {offer})
            assert broken(without, game.rounds, game.found), offer
