"""Sides in words, in English: "north wins", "the herons win"."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.words import called_by_players


def does(side: str, one: str, many: str) -> str:
    """A side with its verb: "north wins", "the herons win"."""
    return f"the {side} {many}" if called_by_players(side) else f"{side} {one}"


def subject(side: str) -> str:
    """A side in a sentence: "north", "the herons"."""
    return does(side, "", "").strip()


def wins(side: str, solo: Mapping[str, bool]) -> str:
    """Who wins: where the players of a side play each for themselves it is one of them, or those who are left."""
    if side not in solo:
        return does(side, "wins", "win")
    return f"those left of {subject(side)} win" if solo[side] else f"one of {subject(side)} wins"
