"""The language of what is printed: English patterns, their translations, and the library's words in that language.

A pattern has named fields: "Made from {parts}." The English pattern is the message's name in the catalogue
`messages/<language>.po` (the gettext format, read by Babel). What authors wrote — names of kit, areas and sides,
quoted rules — is looked up in the word list of the library; what is not there stands as it was written.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import Any, Literal

import library
from grammar.frozen import evolve, field, frozen
from grammar.words import count, listing

FOLDER = Path(__file__).parent / "messages"
# Contexts of the catalogue: the gender of a noun, its number as written, a pattern that agrees with a noun, a group of
# pupils that is now one side, now the other.
GENDER, NUMBER, FEMININE, GROUP = "gender", "number", "feminine", "group"
MANY = "many"
# Catalogues and word lists are written with plain spaces; those that no line may end with are set on reading.
_FIRM_SPACES = ((re.compile(r" (?=[;:!?»%](?:\s|$|[).]))"), "\u00a0"), (re.compile("« "), "«\u00a0"))


@frozen
class Wording:
    """A language by its tag ("en-GB", "fr"). `messages` holds translations by (context, English pattern);
    `several` counted nouns, (one, many), by either number in English; `texts` whole texts of authors."""

    language: str = "en-GB"
    messages: Mapping[tuple[str, str], str] = field(factory=dict, repr=False, eq=False)
    several: Mapping[str, tuple[str, str]] = field(factory=dict, repr=False, eq=False)
    texts: Mapping[str, str] = field(factory=dict, repr=False, eq=False)

    @property
    def english(self) -> bool:
        return self.language.startswith("en")

    def say(self, pattern: str, feminine: bool = False, /, **fields: Any) -> str:
        """The pattern in this language, filled in; in its feminine form where it has one and that is asked for."""
        usual = self.messages.get(("", pattern), pattern)
        return (self.messages.get((FEMININE, pattern), usual) if feminine else usual).format(**fields)

    def known(self, context: str, word: str) -> str | None:
        """What the catalogue says of a word in a context such as "gender"; None where it says nothing."""
        return self.messages.get((context, word))

    def figure(self, number: float, decimals: int | None = None) -> str:
        """A number: "0.5", "18"; with just so many decimals where they are given."""
        if self.english:
            return f"{number:g}" if decimals is None else f"{number:.{decimals}f}"
        from babel.numbers import format_decimal

        pattern = None if decimals is None else "#,##0" + (f".{'0' * decimals}" if decimals else "")
        # The fonts of the card have no narrow space that does not break; the wide one means the same.
        return format_decimal(number, pattern, locale=self.language).replace("\u202f", "\u00a0")

    def percent(self, share: float) -> str:
        """A share of 1: "45 %"."""
        if self.english:
            return f"{100 * share:.0f} %"
        from babel.numbers import format_percent

        return format_percent(share, locale=self.language).replace("\u202f", "\u00a0")

    def counted(self, number: float, one: str, many: str) -> str:
        """ "1 player", "5 players": a figure with its noun in the right number; no article, no "no"."""
        if self.english:
            return count(number, one, many)
        # French counts 0 and 1, and what lies between, as one (Unicode CLDR 44, plural rules, fr: i = 0,1).
        mine = self.several.get(one, (one, many))
        return f"{self.figure(number)} {mine[0] if abs(number) < 2 else mine[1]}"

    def named(self, word: str) -> str:
        """A word of the rule language or of an author as it is, in the number in which it is written."""
        return self.several.get(word, (word, word))[0]

    def author(self, text: str) -> str:
        """A text of an author, or the name of a modifier, in this language; as it was written where nobody
        translated it."""
        return self.texts.get(text, text)

    def knows(self, written: str) -> bool:
        """Whether a name or a text of an author can be said in this language."""
        return self.english or written in self.several or written in self.texts

    def listed(self, items: Iterable[str], last: Literal["and", "or"] = "and") -> str:
        """ "a, b and c"."""
        if self.english:
            return listing(items, last)
        from babel.lists import format_list

        return format_list(list(items), "or" if last == "or" else "standard", locale=self.language)


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
    messages, several = catalogue(FOLDER, tag)
    words = library.word_list(tag)
    for word in words.words.values():
        one, many = firm(word.one), firm(word.many)
        several[word.name] = (one, many)
        several.setdefault(word.names, (many, many))
        messages[GENDER, word.name] = messages[GENDER, word.names] = "f" if word.feminine else "m"
        messages.setdefault((NUMBER, word.names), MANY)
    return Wording(tag, messages, several, {text: firm(said) for text, said in words.texts.items()})


@cache
def _of_sheets(tag: str) -> Mapping[tuple[str, str], str]:
    return catalogue(FOLDER / "sheets", tag)[0]


def with_sheets(wording: Wording) -> Wording:
    """The wording with what is said of sheets that cannot be read, which is loaded only where there are such."""
    if wording.english:
        return wording
    return evolve(wording, messages={**_of_sheets(wording.language), **wording.messages})


def catalogue(folder: Path, tag: str) -> tuple[dict[tuple[str, str], str], dict[str, tuple[str, str]]]:
    """The messages by (context, English pattern) and the counted nouns of a catalogue file."""
    # Loaded only here: English needs no catalogue.
    from babel.messages.pofile import read_po

    with (folder / f"{tag}.po").open("rb") as file:
        read = read_po(file, locale=tag)
    messages, several = dict[tuple[str, str], str](), dict[str, tuple[str, str]]()
    for message in read:
        if not message.id or not message.string:
            continue
        if isinstance(message.id, tuple):
            one, many = (firm(said) for said in message.string)
            several[message.id[0]] = (one, many)
            several.setdefault(message.id[1], (many, many))
            messages[NUMBER, message.id[1]] = MANY
        else:
            messages[message.context or "", str(message.id)] = firm(str(message.string))
    return messages, several


def firm(text: str) -> str:
    """The text with spaces that do not break before the marks that French sets apart."""
    for pattern, instead in _FIRM_SPACES:
        text = pattern.sub(instead, text)
    return text
