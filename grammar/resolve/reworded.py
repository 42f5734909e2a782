"""What a sentence may have been meant to say whose names mean nothing: the same in other words or with near names.

A name may also be right where it is used and wrong where it is declared.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from itertools import islice

import attrs
from lark import UnexpectedInput

from grammar.finding import Correction
from grammar.from_lark import Reader
from grammar.heard.rewrite import choices, rewrites, rewritten
from grammar.language import parse_sentence
from grammar.meanings import AREA_KINDS, Meaning, PlaceMeaning
from grammar.mistakes.near_names import near_names, turning_words
from grammar.mistakes.spelling import words_of_the_language
from grammar.resolve.names import fitting, has_any, name_findings, names_of
from grammar.said import quoting
from grammar.sentences import head, sides, space
from grammar.sentences.base import Name, Node
from grammar.span import Span
from grammar.tree import GameSheet
from grammar.words import LIKE_ENOUGH, likeness, plural

_MOST_TRIED = 12
_REWORDED = 0.15
_OTHER_NUMBER = 0.05
_OF_THE_LANGUAGE = 0.05
_DECLARED = 0.02  # a slip is rather in the one line that declares a name than in those that use it
_DECLARING = (
    (sides.Sides, "names"),
    (sides.Role, "name"),
    (sides.Kit, "name"),
    (sides.Kit, "singular"),
    (space.Area, "name"),
    (space.Track, "name"),
    (head.Switch, "name"),
)


def reworded(section: str, sentence: Node, meanings: Mapping[str, Meaning]) -> tuple[Correction, ...]:
    """The sentence with other wordings (grammar/mistakes/wordings.py) or names, where then every name means something.

    Such as "four foam balls in both halves", which reads as two names: "4 foam balls in each half".
    """
    found = islice(_candidates(sentence, section, meanings), _MOST_TRIED)
    read = [(_read(section, line, sentence), cost) for line, cost in found]
    return tuple(
        Correction(sentence.span, other.words(), cost)
        for other, cost in read
        if other and not any(name_findings(other, meanings))
    )


def _candidates(sentence: Node, section: str, meanings: Mapping[str, Meaning]) -> Iterator[tuple[str, float]]:
    said = sentence.words()
    for chosen in choices(list(rewrites(section, said))):
        yield rewritten(said, chosen), _REWORDED
    best, spent = said, 0.0
    for expected, name in names_of(sentence):
        slip = name.text not in meanings and not _says_its_own(name.text)
        for near, cost in _nearest(name.text, fitting(expected, meanings)) if slip else ():
            best, spent = _renamed(best, name.text, near), spent + cost
    yield best, spent


def _says_its_own(name: str) -> bool:
    """Whether a name is no slip of another: a base is none of a ball, nor is "never" one of anything."""
    return name.removesuffix("s") in AREA_KINDS or bool(turning_words(name))


def _nearest(name: str, known: Iterable[str]) -> list[tuple[str, float]]:
    """The name that is nearest; else the same with its first word as one of the language: "ech half", "teh reeds"."""
    first = name.split()[0]
    words = near_names(first, words_of_the_language(), 1) if first != name else ()
    with_word = [(_renamed(name, first, word), cost + _OF_THE_LANGUAGE) for word, cost in words]
    return near_names(name, known, 1) or with_word


def renamed(section: str, sentence: Node, place: Span, meanings: Mapping[str, Meaning]) -> Iterator[Correction]:
    """The sentence with another name at that place, each in its canonical words where it is one."""
    said = sentence.words()

    def correction(old: str, new: str, cost: float) -> Correction:
        line = _renamed(said, old, new)
        read = _read(section, line, sentence)
        return Correction(sentence.span, read.words() if read else line, cost)

    for expected, name in ((expected, name) for expected, name in names_of(sentence) if name.span == place):
        if isinstance(meanings.get(name.text), PlaceMeaning) and "side" in expected:
            continue  # of a place something is said that is no side's: another name would say something else
        if _says_its_own(name.text):
            continue
        for near, cost in near_names(name.text, fitting(expected, meanings)):
            yield correction(name.text, near, cost)
        for word in dict.fromkeys(name.text.split()):
            for near, cost in near_names(word, words_of_the_language()):
                if not has_any(meanings.get(near), meanings):
                    continue  # the thing is no ring where there is none
                other = _renamed(name.text, word, near)
                yield correction(name.text, other, cost + _OF_THE_LANGUAGE)


def _renamed(line: str, old: str, new: str) -> str:
    return re.sub(rf"(?<!\w){re.escape(old)}(?!\w)", new, line, count=1)


def _read(section: str, line: str, sentence: Node) -> Node | None:
    """Another line in the place of a sentence; None where it is none."""
    try:
        tree = parse_sentence(section, line)
    except UnexpectedInput:
        return None
    node: Node = Reader(sentence.span, lambda column: column, {}).node(tree)
    return node


def declared_otherwise(declared_names: Iterable[tuple[Node, Name]], used: str) -> Iterator[Correction]:
    """The lines that declare a name near to one that is used, each with the name as used; a name that is declared with
    a word more is meant as it stands."""
    known = tuple(declared_names)
    if any(said < set(name.text.split()) for _, name in known for said in ({*used.split()}, {*plural(used).split()})):
        return
    for sentence, declared in known:
        for name in dict.fromkeys((used, plural(used), used.removesuffix("s"))):
            for _, cost in near_names(declared.text, (name,) if likeness(declared.text, name) >= LIKE_ENOUGH else ()):
                many = sentence.count.value != 1 if isinstance(sentence, sides.Kit) else used.endswith("s")
                number = 0.0 if name.endswith("s") == many else _OTHER_NUMBER
                line = _renamed(sentence.words(), declared.text, name)
                title = quoting(
                    "This line speaks of `{declared}`, others of `{used}`.", declared=declared.text, used=used
                )
                yield Correction(sentence.span, line, cost + _DECLARED + number, title=title, mark=declared.span)


def declarations(sheet: GameSheet) -> Iterator[tuple[Node, Name]]:
    """Every name that a sheet declares, with its sentence."""
    for line in (*sheet.head, *(line for part in sheet.sections for line in part.lines)):
        sentence = line.sentence
        for field in attrs.fields(type(sentence)):
            if (type(sentence), field.name) in _DECLARING:
                value = getattr(sentence, field.name)
                yield from ((sentence, each) for each in (value if isinstance(value, tuple) else (value,)) if each)
