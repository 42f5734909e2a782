"""The words of the library in another language: a door to `words/<language>/`, read once and kept."""

from __future__ import annotations

from functools import cache
from types import MappingProxyType
from typing import TypeVar

from grammar.words import plural
from library.load import kit_names
from library.reading import HERE, Entry, read_file
from library.records import Word, WordList

FOLDER = "words"
GENDERS = ("m", "f")
Kept = TypeVar("Kept")


@cache
def word_list(language: str) -> WordList:
    """The words and texts of a language by its tag; empty where the library has none.

    All files of the folder make one list, so that a game may use the words of another; raises DataError
    where two of them say different things.
    """
    words, texts = dict[str, Word](), dict[str, str]()
    for path in sorted((HERE / FOLDER / language).rglob("*.toml")):
        whole = read_file(path)
        whole.only("words", "texts")
        if "words" in whole.values:
            for name, entry in whole.entry("words").entries():
                _keep(words, name, word_from(name, entry), whole)
        if "texts" in whole.values:
            told = whole.entry("texts")
            for text in told.values:
                _keep(texts, text, told.text(text), whole)
    return WordList(MappingProxyType(words), MappingProxyType(texts))


def word_from(name: str, entry: Entry) -> Word:
    """A noun: `one` and `many` in the other language, `gender` m or f."""
    entry.only("one", "many", "gender")
    item = kit_names().get(name)
    written = item.plural if item is not None and item.name == name else plural(name)
    return Word(name, written, entry.text("one"), entry.text("many"), entry.one_of("gender", GENDERS) == "f")


def _keep(found: dict[str, Kept], key: str, value: Kept, whole: Entry) -> None:
    if found.setdefault(key, value) != value:
        raise whole.wrong(key, "stands otherwise in another file")
