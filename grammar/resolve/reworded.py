"""A sentence whose names mean nothing → the same in other words, where then every name means something."""

from __future__ import annotations

from collections.abc import Mapping

from lark import UnexpectedInput

from grammar.from_lark import Reader
from grammar.language import parse_sentence
from grammar.meanings import Meaning
from grammar.resolve.names import name_findings
from grammar.sentences.base import Node
from grammar.wordings import rewrites

_MOST_TRIED = 6


def reworded(section: str, sentence: Node, meanings: Mapping[str, Meaning]) -> str | None:
    """The sentence with other wordings (grammar/wordings.py), or None where none of them helps.

    Such as "four foam balls in both halves", which reads as two names: "4 foam balls in each half".
    """
    said = sentence.words()
    for rewrite in list(rewrites(section, said))[:_MOST_TRIED]:
        line = said[: rewrite.start] + rewrite.new + said[rewrite.end :]
        if not _names_wrong(section, line, sentence, meanings):
            return line
    together = said
    for rewrite in reversed(sorted(rewrites(section, said), key=lambda each: each.start)):
        if together[rewrite.start : rewrite.end] == rewrite.old:
            together = together[: rewrite.start] + rewrite.new + together[rewrite.end :]
    return together if together != said and not _names_wrong(section, together, sentence, meanings) else None


def _names_wrong(section: str, line: str, sentence: Node, meanings: Mapping[str, Meaning]) -> bool:
    try:
        tree = parse_sentence(section, line)
    except UnexpectedInput:
        return True
    node: Node = Reader(sentence.span, lambda column: column, {}).node(tree)
    return any(name_findings(node, meanings))
