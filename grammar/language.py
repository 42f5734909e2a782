"""The sentences of the language, as rules.lark has them: read by its tables, its words by heart."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path

from grammar.parse_tree import Child, parse_tree
from grammar.tables import Tables, tables
from grammar.tokens import Cutter, Token, cutter

GRAMMAR_FILE = Path(__file__).with_name("rules.lark")
STARTS = (
    *("head", "space", "sides", "kit", "set-up", "play", "when", "finish", "care"),
    *("modifier", "remix", "class", "hall"),
)
SHEETS = ("modifier", "remix", "class", "hall")  # sections that are sheets of their own


def start_symbol(section: str) -> str:
    """The grammar's start symbol for the sentences of a section."""
    return f"{section.replace('-', '')}_line"


@cache
def reserved_phrases() -> tuple[str, ...]:
    """All words and phrases of the grammar, the longest first."""
    text = re.sub(r"//.*", "", GRAMMAR_FILE.read_text(encoding="utf-8"))
    phrases = {phrase for phrase in re.findall(r'"([^"]+)"', text) if phrase[0].isalpha()}
    return tuple(sorted(phrases, key=lambda phrase: (-len(phrase), phrase)))


@cache
def sentence_tables() -> Tables:
    """What the sentences of every section are read by."""
    return tables(GRAMMAR_FILE.read_text(encoding="utf-8"), tuple(start_symbol(section) for section in STARTS))


@cache
def _cutter() -> Cutter:
    return cutter(sentence_tables())


@lru_cache(maxsize=1024)
def parse_sentence(section: str, text: str) -> Child:
    """The parse tree of one sentence of a section; raises NoSentenceError where it is none."""
    return parse_tree(sentence_tables(), start_symbol(section), tokens(text))


def tokens(text: str) -> Iterator[Token]:
    """The tokens of a text; raises NoSentenceError where there is none."""
    return _cutter().tokens(text)


def terminal_phrases(kind: str) -> tuple[str, ...]:
    """The words that a kind of word stands for; none for names, numbers and the like."""
    return _phrases_by_kind().get(kind, ())


@cache
def _phrases_by_kind() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for phrase, kind in sentence_tables().phrases.items():
        found.setdefault(kind, []).append(phrase)
    return {kind: tuple(sorted(phrases)) for kind, phrases in found.items()}
