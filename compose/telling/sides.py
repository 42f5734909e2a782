"""Sides in words, in English: "north wins", "the herons win"."""

from __future__ import annotations


def is_plural(side: str) -> bool:
    """Whether a side is called by its players: "herons", "boatmen"; "north" is not."""
    return side.endswith("men") or (side.endswith("s") and not side.endswith("ss") and len(side) > 3)


def does(side: str, one: str, many: str) -> str:
    """A side with its verb: "north wins", "the herons win"."""
    return f"the {side} {many}" if is_plural(side) else f"{side} {one}"


def subject(side: str) -> str:
    """A side in a sentence: "north", "the herons"."""
    return does(side, "", "").strip()


def capital(words: str) -> str:
    """The words with a capital letter."""
    return words[:1].upper() + words[1:]
