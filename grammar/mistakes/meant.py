"""Which rows of the language page a line that cannot be read comes nearest to, by what it speaks of.

What a line speaks of are the concepts of `concepts.txt`, each with the words in which teachers put it, in what happens
and in what follows. Of two rows the second is for what the first leaves unsaid.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from functools import cache
from math import fsum, log
from pathlib import Path

from grammar.frozen import frozen
from grammar.mistakes.wishes import Row, rows, stems, unfulfilled, wished

LIST = Path(__file__).with_name("concepts.txt")
_OWN_SECTION = 1.5
_DECLARING = 2.0
_SAME_EVENT = 2.0
_SAME_PART = 1.2
_OTHER_PART = 0.6
_WHOLE = 1.0
_SAME_WORD = 0.35
_SAID_BEFORE = 0.25
_WISHED = 0.35
_LEAST = 3.0
_RULES = ("play", "when", "finish", "care")  # a rule is seldom meant to declare something


@frozen
class Nearest:
    """The rows that a line probably means, the likeliest first; with a wish that no row fulfils, what comes near it."""

    rows: tuple[Row, ...]
    unfulfilled: str = ""


@frozen
class _Spoken:
    """The concepts of a line in what happens (or all of it) and in what follows; and its other words."""

    first: frozenset[str]
    then: frozenset[str]
    words: frozenset[str]


@cache
def _concepts() -> Mapping[str, re.Pattern[str]]:
    lines = (line.split(" | ", 1) for line in LIST.read_text(encoding="utf-8").splitlines())
    return {name: re.compile(rf"(?<![\w-])(?:{words})(?![\w-])") for name, words in lines}


def _spoken(section: str, line: str) -> _Spoken:
    first, _, then = line.lower().partition(":" if section == "when" else "\n")
    return _Spoken(_found(first), _found(then), frozenset(stems(line)))


def _found(text: str) -> frozenset[str]:
    return frozenset(name for name, pattern in _concepts().items() if pattern.search(text))


@cache
def _spoken_by_rows() -> Mapping[Row, _Spoken]:
    return {row: _spoken(row.section, row.example) for row in rows()}


@cache
def _weights() -> Mapping[str, float]:
    """How much a concept tells: the fewer rows speak of it, the more."""
    every = _spoken_by_rows().values()
    counts = Counter(concept for each in every for concept in each.first | each.then)
    return {concept: log(len(every) / (1 + counts[concept])) for concept in _concepts()}


@cache
def _rarities() -> Mapping[str, float]:
    """How much a word tells that stands for no concept: the fewer rows have it, the more."""
    every = _spoken_by_rows().values()
    counts = Counter(word for each in every for word in each.words)
    return {word: log(len(every) / count) for word, count in counts.items()}


def nearest(section: str, line: str, most: int = 2) -> Nearest:
    """What of the page comes nearest to what a line of a section means."""
    wish = unfulfilled(line)
    if wish is not None:
        return Nearest(wish.near[:most], wish.wish)
    said, found = _spoken(section, line), list[Row]()
    told = list(rows())
    covered, of_wish = frozenset[str](), wished(line)

    def worth(row: Row) -> float:
        return _worth(section, said, row, covered) + _WISHED * of_wish.get(row, 0.0)

    while told and len(found) < most:
        best = max(told, key=worth)
        if worth(best) < _LEAST:
            break
        found.append(best)
        told.remove(best)
        covered |= _spoken_by_rows()[best].first | _spoken_by_rows()[best].then
    return Nearest(tuple(found))


def _worth(section: str, said: _Spoken, row: Row, covered: frozenset[str]) -> float:
    """Sums are exact: those of sets come in any order, and what was told hung on what had been read before."""
    of = _spoken_by_rows()[row]

    def weight(concepts: frozenset[str]) -> float:
        return fsum(_weights()[each] * (_SAID_BEFORE if each in covered else 1.0) for each in concepts)

    same = _SAME_EVENT * weight(said.first & of.first) + _SAME_PART * weight(said.then & of.then)
    other = weight((said.first & of.then) - of.first) + weight((said.then & of.first) - of.then)
    words = fsum(_rarities()[word] for word in said.words & of.words)
    part = _OTHER_PART if of.then and said.then else _WHOLE
    own = _OWN_SECTION if row.section == section else 0.0
    own -= _DECLARING if section in _RULES and row.section not in _RULES else 0.0
    return own + same + part * other + _SAME_WORD * words
