"""The language of what is printed: English patterns, and their translations from message catalogues.

A pattern has named fields: "Made from {parts}." The English pattern is the message's name in the catalogue
`messages/<language>.po` (the gettext format, read by Babel). What authors wrote — titles, names of kit, areas
and sides, quoted rules — is never translated: it stands as it was written, in every language.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from attrs import field, frozen

from grammar.words import count, listing

FOLDER = Path(__file__).parent / "messages"


@frozen
class Wording:
    """A language by its tag ("en-GB", "fr"). `messages` holds translations by (context, English pattern);
    `several` those of counted nouns, (one, many)."""

    language: str = "en-GB"
    messages: Mapping[tuple[str, str], str] = field(factory=dict, repr=False, eq=False)
    several: Mapping[str, tuple[str, str]] = field(factory=dict, repr=False, eq=False)

    @property
    def english(self) -> bool:
        return self.language.startswith("en")

    def say(self, pattern: str, **fields: Any) -> str:
        """The pattern in this language, filled in."""
        return self.messages.get(("", pattern), pattern).format(**fields)

    def known(self, context: str, word: str) -> str | None:
        """What the catalogue says of a word in a context such as "gender"; None where it says nothing."""
        return self.messages.get((context, word))

    def counted(self, number: float, one: str, many: str) -> str:
        """ "1 player", "5 players": a figure with its noun in the right number; no article, no "no"."""
        if self.english:
            return count(number, one, many)
        # French counts 0 and 1, and what lies between, as one (Unicode CLDR 44, plural rules, fr: i = 0,1).
        mine = self.several.get(one, (one, many))
        return f"{format(number, 'g').replace('.', ',')} {mine[0] if abs(number) < 2 else mine[1]}"

    def named(self, word: str) -> str:
        """A word of the rule language as it is, in the number in which it is written; other words stay."""
        return self.several.get(word, (word, word))[0]

    def listed(self, items: Iterable[str], last: str = "and") -> str:
        """ "a, b and c"."""
        return listing(items, self.messages.get(("", last), last))


ENGLISH = Wording()


@cache
def languages() -> tuple[str, ...]:
    """The tags that may be chosen."""
    return ("en", *sorted(path.stem for path in FOLDER.glob("*.po")))


@cache
def wording_of(language: str) -> Wording:
    """The wording of a language of `languages()`; raises KeyError for another."""
    tag = language.lower()
    if tag in ("en", "en-gb"):
        return ENGLISH
    if tag not in languages():
        raise KeyError(language)
    # Loaded only here: English needs no catalogue.
    from babel.messages.pofile import read_po

    with (FOLDER / f"{tag}.po").open("rb") as file:
        catalogue = read_po(file, locale=tag)
    messages, several = dict[tuple[str, str], str](), dict[str, tuple[str, str]]()
    for message in catalogue:
        if not message.id or not message.string:
            continue
        if isinstance(message.id, tuple):
            several[message.id[0]] = (message.string[0], message.string[1])
            several.setdefault(message.id[1], (message.string[1], message.string[1]))
        else:
            messages[message.context or "", str(message.id)] = str(message.string)
    return Wording(tag, messages, several)
