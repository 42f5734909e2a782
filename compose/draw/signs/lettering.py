"""How wide words are on a drawing, before any font is chosen.

The widths are those of a broad sans-serif, rounded up, so that words fit in the narrower fonts too.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from unicodedata import normalize

_NARROW = frozenset("iljI|.,:;' \u00a0\u2018\u2019")
_SLIM = frozenset('frt!()[]-/"\u201c\u201d\u00b7')
_BROAD = frozenset("mwMW@%\u2014\u2026")
# Width at size 1, plain and bold.
_WIDTHS = {
    "narrow": (0.36, 0.42),
    "slim": (0.52, 0.66),
    "broad": (1.01, 1.11),
    "small": (0.64, 0.73),
    "capital": (0.79, 0.86),
    "strange": (1.45, 1.45),
}


def _class_of(letter: str) -> str:
    plain = normalize("NFD", letter)[0]
    if plain in _NARROW:
        return "narrow"
    if plain in _SLIM:
        return "slim"
    if plain in _BROAD:
        return "broad"
    if plain.isascii() and plain.isalnum():
        return "capital" if plain.isupper() else "small"
    return "strange"


@lru_cache(maxsize=4096)  # a name is tried in a hundred places
def width_em(text: str, bold: bool = False) -> float:
    """The width of a text at size 1; never less than in the fonts that we embed."""
    return sum(_WIDTHS[_class_of(letter)][bold] for letter in text)


def shortened(text: str, size: float, room: float, bold: bool = False) -> str:
    """The text, cut with an ellipsis where it is wider than `room` at that size."""
    if width_em(text, bold) * size <= room:
        return text
    while text and width_em(f"{text}\u2026", bold) * size > room:
        text = text[:-1].rstrip()
    return f"{text}\u2026"


def widest(texts: Iterable[str], bold: bool = False) -> float:
    """The width of the widest text at size 1."""
    return max((width_em(text, bold) for text in texts), default=0.0)
