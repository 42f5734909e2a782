"""Lines that declare names in other words than those of the language, as the language says them."""

from __future__ import annotations

from grammar.heard.lists import apart
from grammar.heard.what_there_is import WHAT_THERE_IS
from grammar.heard.words import WORDS


def as_declared(section: str, text: str) -> tuple[str, ...]:
    """The sentences that such a line may be: "5 cones per team", "two taggers and 10 runners", "1 keeper per side"."""
    said = WORDS.applied(section, text)
    for turn in WHAT_THERE_IS:
        said = turn.applied(section, said)
    return (said, *(part for parts in apart(section, said) for part in parts))
