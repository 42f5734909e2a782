"""What a teacher may wish of a game: each can say whether it is met, and by how much it is missed."""

from __future__ import annotations

from typing import Protocol

from compose.fit.suggest.look import Looker
from grammar.game import Game

SHEET, CHECK, FORECAST = 0, 1, 2  # what it costs to ask: the sheet is read, the check runs, a round is forecast
COSTS = (SHEET, CHECK, FORECAST)
UNKNOWN = 2.0  # the gap of what could not be found out in time


class Wish(Protocol):
    """A wish. `cost` is one of COSTS.

    A gap is 0 where the wish is met, else about 1 for a wish missed clearly: gaps of several are added up.
    """

    @property
    def cost(self) -> int: ...

    def words(self) -> str:
        """Such as "rounds of 4 to 6 min"."""
        ...

    def gap(self, game: Game, looker: Looker) -> float:
        """How far a game is from it: 0 where it is met."""
        ...
