"""The examples of LANGUAGE.md: what to say to somebody whose line is no sentence."""

from __future__ import annotations

import re
from collections.abc import Mapping
from difflib import SequenceMatcher
from functools import cache, lru_cache
from pathlib import Path

from grammar.automaton import pieces

PAGE = Path(__file__).with_name("LANGUAGE.md")
_MOST_LETTERS = 160


@cache
def examples() -> Mapping[str, tuple[str, ...]]:
    """The example sentences of each section, in the order of the page."""
    found: dict[str, list[str]] = {}
    section = ""
    for line in PAGE.read_text(encoding="utf-8").splitlines():
        heading = re.fullmatch(r"## ([\w-]+)", line)
        example = re.fullmatch(r"\| .+ \| `(.+)` \|", line)
        if heading:
            section = heading.group(1)
        elif example:
            found.setdefault(section, []).append(example.group(1))
    return {section: tuple(lines) for section, lines in found.items()}


def nearest_example(section: str, line: str) -> str:
    """The example of a section whose words are most like those of a line; "" where the page has none."""
    words = _words(line[:_MOST_LETTERS])

    def likeness(example: str) -> float:
        return SequenceMatcher(None, words, _words(example)).ratio()

    return max(examples().get(section, ()), key=likeness, default="")


@lru_cache(maxsize=512)
def _words(line: str) -> tuple[str, ...]:
    return tuple(piece.text.lower() for piece in pieces(line))


def usual_words(section: str) -> frozenset[str]:
    """Every word of the examples of a section."""
    return frozenset(" ".join(examples().get(section, ())).split())
