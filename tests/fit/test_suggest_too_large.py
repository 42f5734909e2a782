"""What is suggested for a game of which not everything can be looked at, and how a suggestion is named."""

from __future__ import annotations

from playing_games import library_games, looker, modifier_named

from compose.fit.suggest.played_wishes import no_worse
from compose.modifiers.modifier import Use


def test_a_game_too_large_to_prove_is_compared_in_the_part_looked_at() -> None:
    """What can be seen of a remix no further than of the game itself is not worse for that."""
    game = library_games()["lantern-row"]
    small = looker(states=100)
    (wish,) = no_worse(game, small)
    assert not wish.whole and "part looked at" in wish.words()
    assert wish.miss(game, small).met
    (whole,) = no_worse(game, looker())
    assert whole.whole and whole.words() == "nothing new to mend"
    assert whole.miss(game, small).words == "it is too large to prove"


def test_a_suggestion_names_the_numbers_that_it_means() -> None:
    use = Use(modifier_named("court of this size"))
    assert use.in_full == "court of this size (length 14 m, width 7 m)"
    assert Use(modifier_named("kick instead")).in_full == "kick instead"
