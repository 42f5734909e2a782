"""Sides in words: "north wins", "the herons win"."""

from __future__ import annotations


def is_plural(side: str) -> bool:
    """Whether a side is called by its players: "herons", "boatmen"; "north" is not."""
    return side.endswith("men") or (side.endswith("s") and not side.endswith("ss") and len(side) > 3)


def singular_side(side: str) -> str:
    """Such as "heron", "boatman"."""
    if side.endswith("men"):
        return side[:-3] + "man"
    return side[:-3] + "y" if side.endswith("ies") else side[:-1]


def does(side: str, one: str, many: str) -> str:
    """A side with its verb: "north wins", "the herons win"."""
    return f"the {side} {many}" if is_plural(side) else f"{side} {one}"
