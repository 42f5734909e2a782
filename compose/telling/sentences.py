"""Texts made into sentences: a capital at the beginning, a full stop at the end."""

from __future__ import annotations

import re

from compose.telling.french import joined
from compose.telling.wording import Wording
from grammar.words import capital

SPACES = re.compile(r"[ \t\r\n]+")  # not those that no line may end with


def sentence(text: str) -> str:
    """A capital at the beginning, a full stop at the end, single spaces between."""
    tidy = SPACES.sub(" ", text).strip()
    if not tidy:
        return ""
    ended = tidy if tidy[-1] in ".!?" else f"{tidy}."
    return capital(ended)


def told_sentence(wording: Wording, text: str) -> str:
    """The same of what was put together from patterns; French contracts what then stands side by side."""
    return sentence(text if wording.english else joined(text))
