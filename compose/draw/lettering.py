"""How wide words are on a drawing, before any font is chosen.

The widths are those of a broad sans-serif, rounded up, so that words fit in the narrower fonts too.
"""

from __future__ import annotations

from collections.abc import Iterable

_NARROW = frozenset("iljI|.,:;'! \u2018\u2019")
_SLIM = frozenset('frt()[]-/"\u201c\u201d\u00b7')
_BROAD = frozenset("mwMW@%\u2014\u2026")
_CAPITAL = 0.79
_EM = {"narrow": 0.36, "slim": 0.5, "broad": 1.05, "other": 0.66}
_BOLD = 1.13


def width_em(text: str, bold: bool = False) -> float:
    """The width of a text at size 1; never less than in the fonts that we embed."""
    wide = 0.0
    for letter in text:
        if letter in _NARROW:
            wide += _EM["narrow"]
        elif letter in _SLIM:
            wide += _EM["slim"]
        elif letter in _BROAD:
            wide += _EM["broad"]
        else:
            wide += _CAPITAL if letter.isupper() else _EM["other"]
    return wide * (_BOLD if bold else 1.0)


def shortened(text: str, size: float, room: float, bold: bool = False) -> str:
    """The text, cut with an ellipsis where it is wider than `room` at that size."""
    if width_em(text, bold) * size <= room:
        return text
    while text and width_em(f"{text}…", bold) * size > room:
        text = text[:-1].rstrip()
    return f"{text}…"


def widest(texts: Iterable[str], bold: bool = False) -> float:
    """The width of the widest text at size 1."""
    return max((width_em(text, bold) for text in texts), default=0.0)
