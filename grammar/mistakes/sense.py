"""Whether a word put for another keeps what a line says: it is a slip of the pen, or means the same.

A word that says something by itself was meant: "rolled" is no slip of "blocked", and what is struck out is lost.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from grammar.mistakes.examples import PAGE
from grammar.mistakes.small_words import likeness_of_slip
from grammar.mistakes.spelling import words_of_the_language
from grammar.mistakes.wishes import LIST as WISHES
from grammar.words import LIKE_ENOUGH, likeness

SYNONYMS = Path(__file__).with_name("synonyms.txt")
_MUCH_ALIKE = 0.8
_WORD = re.compile(r"[a-z']+(?:-[a-z]+)*")
_EMPTY = frozenset(("a", "an", "the", "and", "of", "then", "please", "just", "also", "that", "it", "is", "are", "be"))
_HELPING = frozenset(("may", "does", "do", "will", "can"))
_TURNING = frozenset(("exactly", "both", "neither", "either", "none", "only", "first", "last", "another", "loses"))
_MORE_THAN_MEANT = frozenset(("freeze", "freezes", "twice", "half"))  # nobody who means it leaves it out
_ALIKE = (
    frozenset(("a", "an", "the", "any", "each", "every", "all", "one")),
    frozenset(("in", "on")),
    frozenset(("on", "at")),
    frozenset(("of", "in")),
    frozenset(("of", "for", "from")),
    frozenset(("to", "towards")),
    frozenset((",", "and", "or", ":")),
    frozenset(("when", "while", "if")),
)


def keeps_the_sense(old: str, new: str) -> bool:
    """Whether a line that has `new` in the place of `old` may still say what was meant."""
    gone, put = ([word for word in words if word not in _HELPING] for words in _apart(old, new))
    if not put:
        return all(word in _EMPTY or not _says_something(word) for word in gone)
    if not gone:
        return _MORE_THAN_MEANT.isdisjoint(put)
    return (len(gone) == len(put) and all(map(_means, gone, put))) or _is_slip("".join(gone), "".join(put))


def loses_no_word(old: str, new: str) -> bool:
    """Whether each word of a line is still there, or is a slip or a synonym of one that is, but for small ones."""
    gone, put = _apart(old, new)
    return all(word in _EMPTY | _HELPING or any(_means(word, each) for each in put) for word in gone)


def _apart(old: str, new: str) -> tuple[list[str], list[str]]:
    """The words of both between what they have in common at their ends."""
    one, other = old.lower().split(), new.lower().split()
    while one and other and one[0] == other[0]:
        one, other = one[1:], other[1:]
    while one and other and one[-1] == other[-1]:
        one, other = one[:-1], other[:-1]
    return one, other


def _means(said: str, word: str) -> bool:
    if (said, word) == ("or", "and"):
        return False  # either is less than both
    return any({said, word} <= group for group in _ALIKE) or word in _synonyms().get(said, ()) or _is_slip(said, word)


def _is_slip(said: str, word: str) -> bool:
    if _stem(said) == _stem(word):
        return True
    if not said.isalpha() or said in _of_the_language():
        return False
    if likeness_of_slip(said, word) > 0 or (len(said) == len(word) and sorted(said) == sorted(word)):
        return True
    return likeness(said, word) >= (_MUCH_ALIKE if _says_something(said) else LIKE_ENOUGH)


def _says_something(word: str) -> bool:
    return word in _TURNING or word in _known_words() or any(letter.isdigit() for letter in word)


def _stem(word: str) -> str:
    for ending in ("ing", "ed", "es", "s", "e"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word.removesuffix(ending)
    return word


@cache
def _known_words() -> frozenset[str]:
    """Words that teachers write on purpose: those of the language, of its page and of what is wished for."""
    texts = (PAGE.read_text(encoding="utf-8"), WISHES.read_text(encoding="utf-8"))
    return frozenset(_WORD.findall(" ".join(texts).lower())) | _of_the_language()


@cache
def _of_the_language() -> frozenset[str]:
    return frozenset(words_of_the_language())


@cache
def _synonyms() -> dict[str, tuple[str, ...]]:
    """What a word means in words of the language, by no book: what teachers say (assumption)."""
    lines = SYNONYMS.read_text(encoding="utf-8").splitlines()
    return {word: tuple(others.split(", ")) for word, others in (line.split(": ") for line in lines)}
