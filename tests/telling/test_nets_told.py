"""Whatever a net holds can be told: its moves, what follows, its ends and its places, in English and in French."""

from __future__ import annotations

from typing import get_args

import pytest

import library
from compose.net.told import Followed, Happened
from compose.staging.resolved import resolved
from compose.telling.english.ends import end_words, way_words
from compose.telling.english.moves import clauses, move_words
from compose.telling.english.nouns import nouns
from compose.telling.english.states import state_in_words
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from compose.telling.wording import wording_of
from grammar.core.values import KindId
from tests.interpreter.sheets import library_game, net_in

GAMES = [path.stem for path in library.game_paths()]


@pytest.mark.parametrize("kind", [*get_args(Happened), *get_args(Followed)])
def test_every_kind_of_move_has_its_words(kind: type) -> None:
    assert clauses.dispatch(kind) is not clauses.dispatch(object)


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", GAMES)
def test_all_of_a_net_is_told(name: str) -> None:
    game = library_game(name)
    net = net_in(game)
    results = net.bell.results if net.bell is not None else ()
    said = [move_words(net, move) for move in (*net.transitions, *net.reactions)]
    said += [words(net, end) for end in (*net.ends, *results) for words in (end_words, way_words)]
    said += [noun for place in net.places for noun in nouns(place, net)]
    french = Happenings(Voice(resolved(game), wording_of("fr")), net)
    said += [french.told(move, net.start(), net.start()) for move in net.transitions]
    said.append(state_in_words(net, net.start()))
    assert not [text for text in said if not text.strip() or "  " in text or "None" in text]


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", GAMES)
def test_parts_are_told_of_what_falls_part_by_part_and_of_nothing_else(name: str) -> None:
    game = library_game(name)
    kinds, net = resolved(game).play, net_in(game)
    for place in net.places:
        if place.token == "target":
            kind = kinds.kind(KindId(str(place.kind)))
            assert [f"{kind.id.key} part" in noun for noun in nouns(place, net)] == [kind.parts > 1] * 2


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", GAMES)
def test_a_net_holds_values_that_are_equal_for_an_equal_game(name: str) -> None:
    assert net_in(library_game(name)) == net_in(library_game(name))
