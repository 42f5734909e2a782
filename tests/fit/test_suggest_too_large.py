"""What is suggested for a game of which not everything can be looked at, and how a suggestion is named."""

from __future__ import annotations

from playing_games import every_modifier, library_games, looker, modifier_named

from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.played_wishes import RoundLasts, no_worse
from compose.fit.suggest.score import Scorer
from compose.fit.suggest.search import search
from compose.fit.suggest.trying import BATCH, Reach
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


def test_moves_of_rounds_played_count_and_what_is_left_is_said() -> None:
    """Of games too large to prove rounds are played: the search ends by its bound, and knows what it left out."""
    eyes = looker(states=100)
    scorer = Scorer(library_games()["lantern-row"], (RoundLasts(50, 60),), eyes)
    base = scorer(())
    assert base is not None and base.moves
    bound = 4 * base.moves
    found = search(scorer, at_the_ends(every_modifier()), Reach(situations=bound))
    assert found.tried and not found.whole and found.untried > 0
    assert bound <= found.situations + found.moves < bound + 2 * BATCH * base.moves
