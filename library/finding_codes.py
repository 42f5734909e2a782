"""What the codes behind findings mean, what to do, and an example of each: read from CODES.md, where people read it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from grammar.frozen import frozen
from library.reading import HERE

PAGE = "CODES.md"
_ENTRY = re.compile(r"^### (\S+)\n((?:(?!- ).+\n)+)- (.+?) ?: (.+)\n- (.+?) ?: (.+)$", re.MULTILINE)


@frozen
class Explanation:
    """A code in plain words; `lines` are the last two as the page puts them, each with its first words."""

    code: str
    means: str
    to_do: str
    example: str
    lines: tuple[str, str]


def page_path(language: str) -> Path:
    """The page of a language by its tag."""
    return HERE / PAGE if language.startswith("en") else HERE / "words" / language / PAGE


@cache
def explanations(language: str = "en") -> Mapping[str, Explanation]:
    """Every code of the page of a language, in its order."""
    found = {}
    for match in _ENTRY.finditer(page_path(language).read_text(encoding="utf-8")):
        code, means, _, to_do, _, example = match.groups()
        to_do_line, example_line = match[0].split("\n- ")[1:]
        found[code] = Explanation(code, " ".join(means.split()), to_do, example, (to_do_line, example_line))
    return MappingProxyType(found)
