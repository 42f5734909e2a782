"""The sentences of the rule language: rules.lark, its words, and the parser of single sentences."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path

from grammar.parse_tree import Child, parsed
from grammar.pieces import Piece, pieces_of
from grammar.tables import Tables, keep_tables, kept_tables

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
def language_tables() -> Tables:
    """The parser's tables for the sentences of every section."""
    text = GRAMMAR_FILE.read_text(encoding="utf-8")
    kept = kept_tables(text)
    if kept is None:
        from grammar.from_rules import tables_from  # loads Lark, which kept tables do without

        kept = keep_tables(text, tables_from(text, [start_symbol(section) for section in STARTS]))
    return kept


@lru_cache(maxsize=1024)
def parse_sentence(section: str, text: str) -> Child:
    """The parse tree of one sentence of a section; raises NoSentenceError where it is none."""
    return parsed(language_tables(), start_symbol(section), text)


def pieces_in(text: str) -> Iterator[Piece]:
    """The words, phrases, numbers and signs of a text; raises StrangeError where there is none."""
    return pieces_of(language_tables(), text)


def terminal_phrases(name: str) -> tuple[str, ...]:
    """The words that a terminal of the grammar stands for; none for names, numbers and the like."""
    return _phrases_by_terminal().get(name, ())


@cache
def _phrases_by_terminal() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for first, ways in language_tables().phrases.items():
        for name, others in ways if first[0].isalpha() else ():
            found.setdefault(name, []).append(" ".join((first, *others)))
    return {name: tuple(sorted(phrases)) for name, phrases in found.items()}
