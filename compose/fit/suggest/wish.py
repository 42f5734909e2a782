"""What a teacher may wish of a game: each can say whether it is met, and what is missing by how much."""

from __future__ import annotations

from typing import Protocol

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.telling.findings import finding_said, told_in
from compose.telling.french import joined
from compose.telling.wording import ENGLISH, Wording
from grammar.finding import Finding
from grammar.game import Game
from grammar.said import Capital, Value, english, said

SHEET, CHECK, FORECAST = 0, 1, 2  # what it costs to ask: the sheet is read, the check runs, a round is forecast
COSTS = (SHEET, CHECK, FORECAST)
UNKNOWN_GAP = 2.0  # of what could not be found out in time
Told = Value | Finding
OF_A_NET = "C-"  # findings whose values stand in a net


@frozen
class Miss:
    """How far a game is from a wish, and what is missing, such as "8 balls, 3 too many".

    `gap` is 0 where the wish is met, else about 1 for a wish missed clearly: gaps of several are added up. `below`
    tells a game with too little of something from one with too much.
    """

    gap: float = 0.0
    told: tuple[Told, ...] = ()
    below: bool = False

    @property
    def met(self) -> bool:
        """Whether nothing is missing."""
        return self.gap == 0

    @property
    def words(self) -> str:
        """What is missing, in English."""
        return self.said()

    def said(self, wording: Wording = ENGLISH) -> str:
        """What is missing, in a language."""
        return "; ".join(dict.fromkeys(in_words(each, wording) for each in self.told))


def missed(gap: float, pattern: str, below: bool = False, /, **fields: Value) -> Miss:
    """A miss with what is missing, in one pattern."""
    return Miss(gap, (said(pattern, **fields),), below)


def of_finding(finding: Finding) -> Told:
    """A finding as what is missing: only what it says, for it is handed from core to core."""
    if finding.said is not None and not finding.code.startswith(OF_A_NET):
        return Capital(finding.said[0])
    return Finding(finding.code, finding.severity, finding.title, finding.place, finding.hint)


def in_words(told: Told, wording: Wording) -> str:
    """What is missing, without a full stop."""
    if isinstance(told, Finding):
        return finding_said(told, wording).title.rstrip(".")
    return (english(told) if wording.english else joined(told_in(told, wording))).rstrip(".")


MET = Miss()
UNKNOWN = missed(UNKNOWN_GAP, "it could not be found out")


class Wish(Protocol):
    """A wish. `cost` is one of COSTS."""

    @property
    def cost(self) -> int: ...

    def words(self, wording: Wording = ENGLISH) -> str:
        """Such as "rounds of 4 to 6 min"."""
        ...

    def miss(self, game: Game, looker: Looker) -> Miss:
        """How far a game is from it."""
        ...
