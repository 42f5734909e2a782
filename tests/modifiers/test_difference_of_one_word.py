"""One word of a game exchanged for another: what is told speaks of it, from either side."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest
from mixtures import library_games, resolved_or_none

from compose.modifiers.difference.difference import differences
from compose.modifiers.difference.same_game import same_game
from grammar.game import Game
from grammar.layout import SECTIONS
from tests.grammar.exchanges import exchanges, names_of
from tests.net.exchange_verdicts import exchanged

SEED, EACH = 7, 15
ORDER = "the same lines in another order, and their order counts"


def neighbours(game: Game) -> Iterator[tuple[str, Game]]:
    """The game with one word exchanged, and what was written instead."""
    places = [(section, at) for section in ("head", *SECTIONS) for at in range(len(game.sheet.lines(section)))]
    chance = random.Random(f"{SEED} {game.title}")
    for section, at in chance.sample(places, min(len(places), 4 * EACH)):
        sentence = game.sheet.lines(section)[at].sentence
        possible = list(exchanges(sentence, names_of(game)))
        if possible:
            exchange = chance.choice(possible)
            sheet = exchanged(game.sheet, section, at, exchange.sentence)
            other = resolved_or_none(sheet) if sheet is not None else None
            if other is not None:
                yield f"{sentence.words()} -> {exchange.sentence.words()}", other


@pytest.mark.parametrize("name", library_games())
@pytest.mark.sample(4)
def test_another_word_is_no_other_order(name: str) -> None:
    game = library_games()[name]
    for number, (words, other) in enumerate(neighbours(game)):
        if number == EACH:
            break
        if not same_game(game, other):
            for one, two in ((game, other), (other, game)):
                assert ORDER not in [each.words for each in differences(one, two)], words
