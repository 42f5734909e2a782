"""What a teacher may wish of a game: each can say whether it is met, and what is missing by how much."""

from __future__ import annotations

from typing import Protocol

from attrs import frozen

from compose.fit.suggest.look import Looker
from grammar.game import Game

SHEET, CHECK, FORECAST = 0, 1, 2  # what it costs to ask: the sheet is read, the check runs, a round is forecast
COSTS = (SHEET, CHECK, FORECAST)
UNKNOWN_GAP = 2.0  # of what could not be found out in time


@frozen
class Miss:
    """How far a game is from a wish, and what is missing in words, such as "8 balls, 3 too many".

    `gap` is 0 where the wish is met, else about 1 for a wish missed clearly: gaps of several are added up. `below`
    tells a game with too little of something from one with too much.
    """

    gap: float = 0.0
    words: str = ""
    below: bool = False

    @property
    def met(self) -> bool:
        """Whether nothing is missing."""
        return self.gap == 0


MET = Miss()
UNKNOWN = Miss(UNKNOWN_GAP, "it could not be found out")


class Wish(Protocol):
    """A wish. `cost` is one of COSTS."""

    @property
    def cost(self) -> int: ...

    def words(self) -> str:
        """Such as "rounds of 4 to 6 min"."""
        ...

    def miss(self, game: Game, looker: Looker) -> Miss:
        """How far a game is from it."""
        ...
