"""Rounds that a hall screen sends, kept on the shelf; one that is sent twice is kept once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.rounds import ObservedRound, observed
from grammar.finding import Finding
from grammar.frozen import frozen

MOST_USES = 12


@frozen
class RoundSent:
    """A round as it was sent; its game is found by name and modifiers, never taken from the sender."""

    uses: tuple[str, ...]
    day: str
    pupils: int
    length_s: float
    winner: str
    waited: int

    @classmethod
    def of(cls, told: Mapping[str, Any]) -> RoundSent | None:
        """The round that these fields say; None where they say none."""
        try:
            uses = tuple(str(each) for each in told.get("uses", ()))[:MOST_USES]
            numbers = int(told["pupils"]), float(told["length_s"]), int(told["waited"])
            return cls(uses, str(told["day"])[:10], numbers[0], numbers[1], str(told["winner"])[:80], numbers[2])
        except (KeyError, ValueError, TypeError, OverflowError):
            return None

    def round(self, content: str) -> ObservedRound:
        """The round of the game with this content."""
        return ObservedRound(self.day, "", self.pupils, self.length_s, self.winner, self.waited, content)


def keep_round(shelf: Path, title: str, seen: ObservedRound, sides: Sequence[str]) -> tuple[Finding, ...]:
    """Keep it; why not, where it cannot be."""
    checked = observed(seen, sides)
    if checked.value is None:
        return checked.findings
    opened = open_shelf(shelf)
    if opened.value is None:
        return opened.findings
    with opened.value as there:
        if seen in (there.rounds(title).value or ()):
            return ()
        outcome = there.observe(title, seen)
        return outcome.findings if outcome.value is None else ()
