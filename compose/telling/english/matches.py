"""What a sheet calls a game: "best of 3 rounds", and one part of it."""

from __future__ import annotations

from compose.net.match import Match


def match_words(match: Match) -> str:
    """The lines of the sheet that say so."""
    return "; ".join(match.lines)


def part_words(match: Match) -> str:
    """What is won where it is not all: "a half", "a round"."""
    return {"half": "a half", "innings": "an innings", "round": "a round"}[match.part]
