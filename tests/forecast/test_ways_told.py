"""What makes a side win stands beside its name: it is said of that side, in English and in French."""

from __future__ import annotations

import re

import pytest

from compose.forecast.telling.speech import ENGLISH_SPEECH, Speech
from compose.staging.resolved import resolved
from compose.telling.voice import Voice
from compose.telling.wording import wording_of
from tests.interpreter.sheets import library_game, net_in


@pytest.mark.parametrize("name", ["beacon-wardens", "plover-nests", "peat-cutters", "weir-ball"])
def test_the_winner_is_not_named_again(name: str) -> None:
    game = library_game(name)
    net = net_in(game)
    french = Speech(Voice(resolved(game), wording_of("fr")))
    won = [end for end in net.ends if end.winner is not None]
    assert {end.winner for end in won} == set(net.sides)
    for end in won:
        for speech in (ENGLISH_SPEECH, french):
            winner = speech.side(str(end.winner))
            assert not re.search(rf"\b{re.escape(winner)}\b", speech.way(net, end))
