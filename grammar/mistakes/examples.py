"""The examples of LANGUAGE.md: what to say to somebody whose line is no sentence."""

from __future__ import annotations

import re
from collections.abc import Mapping
from difflib import SequenceMatcher
from functools import cache, lru_cache
from pathlib import Path

from grammar.automaton import pieces
from grammar.frozen import frozen

PAGE = Path(__file__).parents[1] / "LANGUAGE.md"
_MOST_LETTERS = 160
_FIRST = re.compile(r"\W*(?:an? |the )?(\w+)")
OF_CLASSES = ("class", "hall")  # a class may say the lines of its hall itself


@frozen
class Example:
    """A row of the page: what it says, and a line that says it."""

    says: str
    example: str


@cache
def examples() -> Mapping[str, tuple[Example, ...]]:
    """The examples of each section, in the order of the page."""
    found: dict[str, list[Example]] = {}
    section = ""
    for line in PAGE.read_text(encoding="utf-8").splitlines():
        heading = re.fullmatch(r"## ([\w-]+)", line)
        example = re.fullmatch(r"\| (.+) \| `(.+)` \|", line)
        if heading:
            section = heading.group(1)
        elif example:
            found.setdefault(section, []).append(Example(*example.groups()))
    return {section: tuple(lines) for section, lines in found.items()}


def nearest_examples(section: str, line: str, most: int = 2) -> list[Example]:
    """The examples of a section most like a line, the likest first: what begins alike before what shares more words."""
    words, begins = _words(line[:_MOST_LETTERS]), _first_word(line)

    def likeness(each: Example) -> tuple[bool, float]:
        said = _words(each.example)
        return _first_word(each.example) == begins, SequenceMatcher(None, words, said).ratio()

    sections = OF_CLASSES if section == "class" else (section,)
    there = [each for name in sections for each in examples().get(name, ())]
    return sorted(there, key=likeness, reverse=True)[:most]


def _first_word(line: str) -> str:
    """The word that a line begins with, whatever sign stands behind it; an article is none."""
    found = _FIRST.match(line[:_MOST_LETTERS].lower())
    return found.group(1) if found else ""


@lru_cache(maxsize=512)
def _words(line: str) -> tuple[str, ...]:
    return tuple(piece.text.lower() for piece in pieces(line))


def usual_words(section: str) -> frozenset[str]:
    """Every word of the examples of a section."""
    return frozenset(" ".join(each.example for each in examples().get(section, ())).split())
