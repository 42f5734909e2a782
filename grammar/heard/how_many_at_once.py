"""How many of a side run at once, in a line by itself: it is said of the one thing that they run for."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import attrs

from grammar.heard.words import in_words_of_the_language
from grammar.lines import TextLine

_AT_ONCE = re.compile(
    r"(?=.*\b(?:players?|side)\b)(?:only |at most )?(?P<number>\d+)(?: players?)?"
    r"(?: (?:of|from|in|on) (?:each|every|a) side)?"
    r"(?: (?:may |can )?(?:runs?|goes|go|starts?|is on the way|are on the way))? at (?:a time|once|the same time)",
    re.IGNORECASE,
)
_MAY_SAY = re.compile(r"\bat (?:a time|once|the same time)\b", re.IGNORECASE)  # asked of every line


def with_how_many_at_once(
    lines: Sequence[TextLine], names: Sequence[str], is_sentence: Callable[[TextLine], bool]
) -> tuple[TextLine, ...]:
    """The lines of play; where one says only how many run at once, and one alone can have that said of it, both are
    one."""
    said = [at for at, line in enumerate(lines) if _MAY_SAY.search(line.text) and _number(line, names)]
    if len(said) != 1 or is_sentence(lines[said[0]]):
        return tuple(lines)
    number = _number(lines[said[0]], names)
    more = f", only {number} {'player' if number == '1' else 'players'} at a time"
    joined = {at: attrs.evolve(line, text=line.text + more) for at, line in enumerate(lines) if at != said[0]}
    found = [at for at, line in joined.items() if is_sentence(lines[at]) and is_sentence(line)]
    if len(found) != 1:
        return tuple(lines)
    return tuple(joined[at] if at == found[0] else line for at, line in enumerate(lines) if at != said[0])


def _number(line: TextLine, names: Sequence[str]) -> str:
    """How many; "" where the line says something else."""
    match = _AT_ONCE.fullmatch(in_words_of_the_language("play", line.text, names))
    return match["number"] if match else ""
