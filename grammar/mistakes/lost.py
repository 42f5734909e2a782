"""Lines that could not be read, and what is not to be said of a sheet because one of them may say it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.frozen import frozen
from grammar.layout import SECTIONS
from grammar.words import LIKE_ENOUGH, likeness

ONLY_SEEMING = ("G-sense", "G-contradiction", "G-no-points", "G-too-many")  # may come of what others say or do not
DECLARING = frozenset(("head", "space", "sides", "kit"))
_COMING_IN = "what comes in later"  # of when, the only lines that say where things are
_FOLLOWS = {
    "G-missing": frozenset(("space",)),
    "G-no-place": frozenset(("set-up", _COMING_IN)),
    "G-too-many": frozenset(("sides", "kit")),
    "G-switch": frozenset(("play", "when", "finish")),
    "G-half": frozenset(("space",)),
}


@frozen
class LostLine:
    """A line of a sheet that could not be read, with the sections to which it may belong."""

    sections: frozenset[str]
    text: str  # "" for all that follows


REST = LostLine(frozenset(SECTIONS), "")


def may_declare(lost: Sequence[LostLine], name: str) -> bool:
    """Whether a lost line may be the one that declares a name: it has a word like the last of the name."""
    last = name.rsplit(maxsplit=1)[-1].lower()
    if any(not line.text for line in lost):
        return True
    words = (word.strip(",:;.") for line in lost if line.sections & DECLARING for word in line.text.lower().split())
    return any(likeness(last, word) >= LIKE_ENOUGH for word in words)


def may_follow(code: str, missing: Sequence[LostLine]) -> bool:
    """Whether a mistake may be none, were the missing lines there."""
    said = frozenset(section for line in missing for section in line.sections)
    of_when = [line.text.lower() for line in missing if "when" in line.sections]
    if any(not text or re.search(r"\bcom(?:e|es|ing)\b", text) for text in of_when):
        said |= {_COMING_IN}
    return bool(_FOLLOWS.get(code, frozenset()) & said)
