"""Other ways of saying something: a pattern, and the wording of the language; and what no wording may change."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache, lru_cache

from grammar.frozen import field, frozen
from grammar.words import singulars

SHIELD = "ǁ"
WHAT = rf"(?:{SHIELD}\d+|[\w-]+(?: ball)?)"  # what somebody or something is called
_SHIELDED = re.compile(rf"{SHIELD}(\d+)")
_STRING = r'"[^"]*"|[“„«][^"“”„«»]*[“”»]'
_CURLY = re.compile("[“”„«»]")
_ONE = re.compile(r"\b(?:an?|each|every|role) $", re.IGNORECASE)
_OF_ANY_SHEET = ("ball", "balls")  # which mean the same whether the kit calls something so or not
New = str | Callable[[re.Match[str]], str]


@frozen
class Saying:
    """`old`, a pattern in any case, is said `new` (a template of it) in these sections, or in all where none is named.

    A pattern is compiled where something is said so, or might be: there are hundreds, and most sheets need none.
    """

    old: str
    new: New
    sections: tuple[str, ...] = ()

    def applied(self, section: str, text: str) -> str:
        """The text with it said so wherever it stands."""
        return _compiled(self.old).sub(self.new, text) if not self.sections or section in self.sections else text


def saying(old: str, new: New, *sections: str) -> Saying:
    """The saying of a pattern, in any case."""
    return Saying(old, new, sections)


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


@frozen
class Sayings:
    """Several, which are applied one after the other."""

    parts: tuple[Saying, ...]
    any_of_them: str = field(init=False)

    @any_of_them.default
    def _any_of_them(self) -> str:
        return "|".join(f"(?:{each.old})" for each in self.parts)

    def search(self, text: str) -> bool:
        """Whether anything in a text is said otherwise."""
        return _compiled(self.any_of_them).search(text) is not None

    def applied(self, section: str, text: str) -> str:
        """The text with each of them said as the language says it."""
        for each in self.parts:
            text = each.applied(section, text)
        return text


@frozen
class Shielded:
    """A line in which names of the sheet and texts in quotes are one letter each, which no wording changes."""

    text: str
    kept: tuple[str, ...]
    names: tuple[str, ...]

    def opened(self, text: str) -> str:
        """A text with what stood behind the shields; of a name behind "a", "each" or "role" the singular."""
        return _SHIELDED.sub(self._opened, text)

    def _opened(self, match: re.Match[str]) -> str:
        kept = _CURLY.sub('"', self.kept[int(match[1])])
        if _ONE.search(match.string, 0, match.start()):
            return next((one for one in singulars(kept) if one in self.names), kept)
        return kept


def shielded(line: str, names: Sequence[str]) -> Shielded:
    """The line with names and texts in quotes behind shields.

    Digits that touch a text in quotes go behind the shield with it, as does a shield that somebody wrote: both would
    be taken for the number of a shield.
    """
    names = tuple(name for name in names if name not in _OF_ANY_SHEET)
    kept: list[str] = []

    def shield(match: re.Match[str]) -> str:
        if match.group() not in kept:
            kept.append(match.group())
        return f"{SHIELD}{kept.index(match.group())}"

    return Shielded(_to_shield(names).sub(shield, line), tuple(kept), names)


@lru_cache(maxsize=64)
def _to_shield(names: tuple[str, ...]) -> re.Pattern[str]:
    """What goes behind shields in a sheet with these names: the same in all of its lines."""
    forms = "|".join([rf"(?:{_STRING}|{SHIELD})\d*", *(rf"(?<![\w-]){re.escape(name)}(?![\w-])" for name in names)])
    return re.compile(forms, re.IGNORECASE)
