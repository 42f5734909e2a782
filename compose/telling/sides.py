"""Sides in words, in English: "north wins", "the herons win"."""

from __future__ import annotations

from collections.abc import Collection

from grammar.words import called_by_players


def does(side: str, one: str, many: str) -> str:
    """A side with its verb: "north wins", "the herons win"."""
    return f"the {side} {many}" if called_by_players(side) else f"{side} {one}"


def subject(side: str) -> str:
    """A side in a sentence: "north", "the herons"."""
    return does(side, "", "").strip()


def wins(side: str, solo: Collection[str]) -> str:
    """Who wins: where the players of a side play each for themselves it is one of them."""
    return f"one of {subject(side)} wins" if side in solo else does(side, "wins", "win")
