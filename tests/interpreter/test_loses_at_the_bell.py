"""Who has lost at the bell: the other side has won, or nobody where there is one side."""

from __future__ import annotations

import pytest

from compose.telling.endings import bells_told
from compose.telling.english.ends import end_words
from compose.telling.french import joined
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from compose.telling.wording import wording_of
from grammar.core.ends import Bell
from grammar.core.reading.from_game import core_of
from tests.grammar.test_clock_is_kept import SHEET, told
from tests.interpreter.sheets import game_in, granted, net_in
from tests.interpreter.test_same_states import agree

ALONE = """
game Crossing
space
  court 18 m by 12 m, in one piece
  far bench: behind a back line
sides
  crossers, 2 to 26 players
kit
  2 cones
set-up
  cones behind the back line
play
  crossers run from wall to wall
when
  a crosser arrives: the crosser goes to the far bench
finish
  crossers win when they have all players on the far bench
  after 12 min: {result}
"""


def bell(text: str) -> Bell | None:
    core = core_of(game_in(text), granted()).value
    assert core is not None
    return core.play.bell


@pytest.mark.parametrize(("lost", "same"), [
    ("north loses", "south wins"), ("south loses", "north wins"),
    ("more pins standing wins, else north loses", "more pins standing wins, else south wins"),
])  # fmt: skip
def test_of_two_the_other_has_won(lost: str, same: str) -> None:
    texts = [SHEET + f"  after 6 min: {result}\n" for result in (lost, same)]
    assert bell(texts[0]) == bell(texts[1])
    agree(game_in(texts[0]), {"north": 1, "south": 1})


@pytest.mark.parametrize(("result", "told", "french"), [
    ("crossers lose", "the crossers lose", "les crossers perdent"),
    ("nobody wins", "nobody wins", "personne ne gagne"),
])  # fmt: skip
def test_of_one_nobody_has_won_and_it_is_told_as_it_was_said(result: str, told: str, french: str) -> None:
    """A side that plays alone against the clock has lost: to tell that nobody wins then said less."""
    game = game_in(ALONE.format(result=result))
    agree(game, {"crossers": 2})
    net = net_in(game, {"crossers": 2})
    assert net.bell is not None
    (end,) = net.bell.results
    assert end.winner is None and end.nobody and end_words(net, end) == f"{told}: after 12 min"
    core = core_of(game, granted()).value
    assert core is not None
    for language, said in (("en", told), ("fr", french)):
        voice = Voice(core, wording_of(language))
        assert Happenings(voice, net).ended(end, False) == said
        (line,) = bells_told(voice, [at] if (at := core.play.bell) else [])
        assert joined(line).endswith(said)


@pytest.mark.parametrize("result", ["a side loses", "the thrower's side loses", "herons lose"])
def test_who_has_lost_must_be_known(result: str) -> None:
    assert told(f"after 6 min: {result}")
