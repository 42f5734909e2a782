"""An event that teachers narrow where it stands: a catch out of the air, a hit below the shoulder. The language says of
the others, under play, that they do not count."""

from __future__ import annotations

import re

_OUT_OF_THE_AIR = re.compile(
    r",? (?:(?:straight |right |directly )?(?:from|out of|in) the air|"
    r"before (?:it|the ball) (?:touches|hits) the (?:floor|ground))(?=[,: ])",
    re.IGNORECASE,
)
_LOW = re.compile(r",? below the (shoulder|hip|knee)s?(?=[,: ])", re.IGNORECASE)
_CAUGHT = re.compile(r"\b(?:caught|catch(?:es)?)\b", re.IGNORECASE)
_HIT = re.compile(r"\bhits?\b", re.IGNORECASE)


def narrowed(text: str) -> tuple[str, tuple[str, ...]]:
    """A line of when without what narrows its event, and the rules of play that say it; none where nothing does."""
    event, *rest = re.split(r"(?=: )", text, maxsplit=1) if ": " in text else re.split(r"(?=, )", text, maxsplit=1)
    caught, hit = _CAUGHT.search(event) is not None, _HIT.search(event) is not None
    if caught == hit or not rest:
        return text, ()
    what = "catch" if caught else "hit"
    whole = f"{event},"  # so that each stretch has a sign behind it
    rules = [f"a {what} after a bounce does not count"] if _OUT_OF_THE_AIR.search(whole) else []
    rules += [f"a hit above the {low[1].lower()} does not count" for low in _LOW.finditer(whole) if hit]
    said = _OUT_OF_THE_AIR.sub("", whole)
    return f"{(_LOW.sub('', said) if hit else said)[:-1]}{rest[0]}", tuple(rules)
