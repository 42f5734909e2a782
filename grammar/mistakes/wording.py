"""One other way in which people write what the language says, with the wording of the language."""

from __future__ import annotations

import re
from collections.abc import Callable

from grammar.frozen import frozen

ANYWHERE = ("",)
USUAL_COST = 0.15


@frozen
class Wording:
    """`old` (a pattern, in any case) is written `new` (a template of it) in these sections, or in all."""

    old: re.Pattern[str]
    new: str | Callable[[re.Match[str]], str]
    sections: tuple[str, ...]
    said: str = ""
    cost: float = USUAL_COST


def wording(
    old: str, new: str | Callable[[re.Match[str]], str], *sections: str, said: str = "", cost: float = USUAL_COST
) -> Wording:
    """A wording of a pattern, in any case."""
    return Wording(re.compile(old, re.IGNORECASE), new, sections or ANYWHERE, said, cost)
