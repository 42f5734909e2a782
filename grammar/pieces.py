"""A line cut into pieces: the words and phrases of the language, names, numbers and signs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from grammar.frozen import frozen
from grammar.tables import Tables

_SPACE = re.compile(r"[ \t]*")
_WORD = re.compile(r"[\w'’-]+")  # to the border behind which a word of the language may end
_NEXT_WORD = re.compile(rf"\s+({_WORD.pattern})")


class NoSentenceError(Exception):
    """A text is no sentence."""


class StrangeError(NoSentenceError):
    """A text holds a letter that the language does not know, at `start` (from 0)."""

    def __init__(self, start: int) -> None:
        super().__init__(start)
        self.start = start


@frozen
class Piece:
    """A word, phrase, number or sign of a line. `kind` is its terminal in rules.lark, or "?" where it is
    no part of the language; `start` and `end` count letters from 0."""

    kind: str
    text: str
    start: int
    end: int


def pieces_of(tables: Tables, text: str) -> Iterator[Piece]:
    """The pieces of a text, one after the other; raises where a letter is none and begins none."""
    at = _after_spaces(text, 0)
    while at < len(text):
        kind, end = _phrase(tables, text, at) or _open_piece(tables, text, at)
        yield Piece(kind, text[at:end], at, end)
        at = _after_spaces(text, end)


def _after_spaces(text: str, at: int) -> int:
    spaces = _SPACE.match(text, at)
    return spaces.end() if spaces else at


def _phrase(tables: Tables, text: str, at: int) -> tuple[str, int] | None:
    """The first phrase of the language that stands there, with its end."""
    first = _WORD.match(text, at)
    if first is None:
        return None
    for kind, others in tables.phrases.get(first.group().lower(), ()):
        end = _end_of(text, first.end(), others)
        if end is not None:
            return kind, end
    return None


def _end_of(text: str, end: int, words: tuple[str, ...]) -> int | None:
    """Where these words end that come next; None where others come."""
    for word in words:
        found = _NEXT_WORD.match(text, end)
        if found is None or found.group(1).lower() != word:
            return None
        end = found.end()
    return end


def _open_piece(tables: Tables, text: str, at: int) -> tuple[str, int]:
    found = _compiled(tables.open_pieces).match(text, at)
    if found is None or found.lastgroup is None:
        raise StrangeError(at)
    return found.lastgroup, found.end()


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)
