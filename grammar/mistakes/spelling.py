"""A line with several slips of spelling: every word that stands nowhere else put right at once."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence, Set
from functools import cache
from itertools import islice, product

from grammar.language import reserved_phrases
from grammar.mistakes.near_names import near_names, turning_words
from grammar.mistakes.small_words import small_words_for
from grammar.said import Capital, Value, listed, quoting
from grammar.sentences.base import METRES, SECONDS
from grammar.words import plural

_WORD = re.compile(r"[A-Za-z][A-Za-z'-]*")
_QUOTED = re.compile(r'"[^"]*"')
MOST_WRONG = 4
_MOST_WAYS = 12


def spelled(lines: Sequence[str], number: int, kit: Collection[str]) -> Iterator[tuple[str, Value, str]]:
    """The line of that number (from 1) with such words as others of the language, then of the whole sheet as well;
    each with what was changed, and the first such word. `kit` are names that mean something without being declared."""
    line = lines[number - 1].strip()
    elsewhere = (each for at, each in enumerate(lines, 1) if at != number and not each.lstrip().startswith("note:"))
    sheet = {word for each in elsewhere for word in _words(each)} | {word for name in kit for word in name.split()}
    language = words_of_the_language()
    right = {*language, *METRES, *SECONDS}
    unknown = (word for word in dict.fromkeys(_words(line)) if not _known(word, sheet) and word not in right)
    wrong = [word for word in unknown if not turning_words(word)]  # who writes "may" or "never" meant it
    if '"' in line or not 0 < len(wrong) <= MOST_WRONG:
        return
    for known in (language, (*language, *sorted(sheet))):
        for found in _ways(wrong, known, sheet):
            said = listed(quoting("`{old}` is written `{new}`", old=old, new=new) for old, new in found.items())
            yield _exchanged(line, found), quoting("{what}.", what=Capital(said)), next(iter(found))


def _ways(wrong: Sequence[str], known: tuple[str, ...], sheet: Set[str]) -> Iterator[Mapping[str, str]]:
    """The words that are written for wrong ones, where there are such: of small words any that it may be."""
    near = {word: _nearest(word, known, sheet) for word in wrong}
    small = {word: small_words_for(word) for word in wrong}
    slips = {word: dict.fromkeys((*small[word], *([new] if new else []))) for word, new in near.items()}
    slips = {word: new for word, new in slips.items() if new}
    for chosen in islice(product(*slips.values()), _MOST_WAYS) if slips else ():
        yield dict(zip(slips, chosen, strict=True))


def _known(word: str, sheet: Set[str]) -> bool:
    return not sheet.isdisjoint({word, plural(word), word.removesuffix("s")})


def _nearest(word: str, known: tuple[str, ...], sheet: Collection[str]) -> str | None:
    """Of those that are as near rather a word that the sheet holds, too."""
    near = near_names(word, known)
    return min(near, key=lambda each: (each[1], each[0] not in sheet))[0] if near else None


def _exchanged(line: str, found: Mapping[str, str]) -> str:
    return _WORD.sub(lambda match: found.get(match.group().lower(), match.group()), line)


def _words(line: str) -> list[str]:
    return [match.group().lower() for match in _WORD.finditer(_QUOTED.sub("", line))]


@cache
def words_of_the_language() -> tuple[str, ...]:
    """Every word that a sentence of the language may hold."""
    return tuple(dict.fromkeys(word for phrase in reserved_phrases() for word in phrase.split()))
