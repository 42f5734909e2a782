"""What the forecast finds of those who do not play is mended by what lets them play."""

from __future__ import annotations

from playing_games import library_games, looker, modifier_named

from compose.fit.suggest.played_wishes import mends
from compose.fit.suggest.score import Scorer
from compose.fit.suggest.search import search
from compose.fit.suggest.suggestion import suggestions
from compose.modifiers.modifier import Use


def test_a_side_that_rests_is_mended_by_other_rounds() -> None:
    """What the rounds are for is said once: several rounds take the place of a side that rests."""
    game, eyes = library_games()["kiln-row"], looker()
    uses = [Use(modifier_named(name)) for name in ("best of rounds", "kick instead")]
    (only,) = suggestions(search(Scorer(game, mends(game, eyes), eyes), uses), Scorer(game, mends(game, eyes), eyes))
    assert [use.label for use in only.uses] == ["best of rounds"]
