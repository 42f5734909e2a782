"""A sentence whose names mean nothing → the same in other words, where then every name means something."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import islice

from lark import UnexpectedInput

from grammar.from_lark import Reader
from grammar.language import parse_sentence
from grammar.meanings import Meaning
from grammar.resolve.names import fitting, name_findings, names_of
from grammar.rewrite import choices, rewrites, rewritten
from grammar.sentences.base import Node
from grammar.words import likeness, nearest

_MOST_TRIED = 8
_LIKE_ENOUGH = 0.8


def reworded(section: str, sentence: Node, meanings: Mapping[str, Meaning]) -> str | None:
    """The sentence with other wordings (grammar/wordings.py) or spellings, or None where none of them helps.

    Such as "four foam balls in both halves", which reads as two names: "4 foam balls in each half".
    """
    for line in islice(_candidates(section, sentence, meanings), _MOST_TRIED):
        if not _names_wrong(section, line, sentence, meanings):
            return line
    return None


def _candidates(section: str, sentence: Node, meanings: Mapping[str, Meaning]) -> Iterator[str]:
    said = sentence.words()
    for chosen in choices(list(rewrites(section, said))):
        yield rewritten(said, chosen)
    spelled = said
    for expected, name in names_of(sentence):
        if name.text not in meanings:
            near = _respelled(name.text, fitting(expected, meanings))
            spelled = re.sub(rf"(?<!\w){re.escape(name.text)}(?!\w)", near, spelled, count=1)
    yield spelled


def _respelled(name: str, known: list[str]) -> str:
    """The known name that is spelled almost like it, rather with an s at the end if it has one."""

    def fit(word: str) -> float:
        return likeness(name, word) + (0.1 if word[-1:] == name[-1:] else 0.0)

    near = [word for word in nearest(name, known) if likeness(name, word) >= _LIKE_ENOUGH]
    return max(near, key=fit, default=name)


def _names_wrong(section: str, line: str, sentence: Node, meanings: Mapping[str, Meaning]) -> bool:
    try:
        tree = parse_sentence(section, line)
    except UnexpectedInput:
        return True
    node: Node = Reader(sentence.span, lambda column: column, {}).node(tree)
    return any(name_findings(node, meanings))
