"""A line cut into the words, phrases, numbers and signs of the language.

The longest phrase of the language comes first; then names, numbers and the like. Every word of the language ends at a
word border, so `outt` is never read as `out` and `t`; and no word of the language may be part of a name, so a slip is
reported where it stands and not at the end of the line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from grammar.frozen import field, frozen
from grammar.tables import Tables

_RUN = re.compile(r"[\w'’-]+")
_SPACE = re.compile(r"\s+")
_IGNORED = "__IGNORE_0"


class NoSentenceError(Exception):
    """A line is no sentence; `at` is the letter, from 0, at which it stops being the beginning of one."""

    def __init__(self, at: int) -> None:
        super().__init__(at)
        self.at = at


@frozen
class Token:
    """A piece of a line: its kind in rules.lark, as it is written, and at which letter it starts, from 0."""

    kind: str
    text: str
    start: int

    @property
    def end(self) -> int:
        """The letter after it, from 0."""
        return self.start + len(self.text)


@frozen(eq=False)
class Cutter:
    """Cuts lines by the words of the tables."""

    phrases: Mapping[str, str]
    open_kinds: re.Pattern[str]
    _most_words: Mapping[str, int] = field(init=False)

    @_most_words.default
    def _most_words_of(self) -> Mapping[str, int]:
        """Of how many words the longest phrase is that begins with a word."""
        most: dict[str, int] = {}
        for phrase in self.phrases:
            words = phrase.split()
            most[words[0]] = max(most.get(words[0], 0), len(words))
        return most

    def tokens(self, text: str) -> Iterator[Token]:
        """The pieces of a line; raises NoSentenceError where there is none."""
        at = 0
        while at < len(text):
            token = self._phrase(text, at) or self._open(text, at)
            if token.kind != _IGNORED:
                yield token
            at = token.end

    def _phrase(self, text: str, at: int) -> Token | None:
        """The longest phrase of the language that stands here."""
        run = _RUN.match(text, at)
        said = run.group().lower() if run else ""
        most = self._most_words.get(said, 0)
        found = None
        for words in range(1, most + 1):
            if run is None:
                break
            if said in self.phrases:
                found = Token(self.phrases[said], text[at : run.end()], at)
            if words < most:
                space = _SPACE.match(text, run.end())
                run = _RUN.match(text, space.end()) if space else None
                said = f"{said} {run.group().lower()}" if run else ""
        return found

    def _open(self, text: str, at: int) -> Token:
        match = self.open_kinds.match(text, at)
        if match is None or match.lastgroup is None:
            raise NoSentenceError(at)
        return Token(match.lastgroup, match.group(), at)


def cutter(by: Tables) -> Cutter:
    """The cutter for the words of these tables."""
    return Cutter(by.phrases, re.compile("|".join(f"(?P<{kind}>{pattern})" for kind, pattern in by.open_kinds)))
