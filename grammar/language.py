"""The parser of single sentences, made from rules.lark by Lark.

Lark's own keyword handling is tightened in two ways. Every word of the grammar ends at a word border,
so `outt` is never read as `out` and `t`. No reserved word may be part of a name, so a slip is reported
where it stands and not at the end of the line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path

from lark import Lark, Token, UnexpectedCharacters, UnexpectedInput, UnexpectedToken
from lark.lexer import PatternRE, PatternStr, TerminalDef
from lark.tree import ParseTree

from grammar.tables import keep_tables, kept_tables

GRAMMAR_FILE = Path(__file__).with_name("rules.lark")
STARTS = (
    *("head", "space", "sides", "kit", "set-up", "play", "when", "finish", "care"),
    *("modifier", "remix", "class", "hall"),
)
# What may not follow a word. Two looks, for one set with a curly mark in it takes a regular expression ten times
# as long to make, and there are two hundred of them.
_BORDER = r"(?![\w'-])(?!’)"
SHEETS = ("modifier", "remix", "class", "hall")  # sections that are sheets of their own
_OPEN_TERMINALS = frozenset(
    ("WORD", "POSSESSIVE", "STRING", "LENGTH", "DURATION", "PERCENT", "NUMBER", "LICENCE", "SIZE")
)


def start_symbol(section: str) -> str:
    """The grammar's start symbol for the sentences of a section."""
    return f"{section.replace('-', '')}_line"


@cache
def reserved_phrases() -> tuple[str, ...]:
    """All words and phrases of the grammar, the longest first."""
    text = re.sub(r"//.*", "", GRAMMAR_FILE.read_text(encoding="utf-8"))
    phrases = {phrase for phrase in re.findall(r'"([^"]+)"', text) if phrase[0].isalpha()}
    return tuple(sorted(phrases, key=lambda phrase: (-len(phrase), phrase)))


def _as_pattern(phrase: str) -> str:
    return r"\s+".join(re.escape(word) for word in phrase.split())


def _edit(terminal: TerminalDef) -> TerminalDef:
    pattern = terminal.pattern
    if terminal.name in ("LENGTH", "DURATION", "POSSESSIVE"):
        terminal.pattern = PatternRE(f"(?i:{pattern.value})")
    elif terminal.name not in _OPEN_TERMINALS and any(letter.isalpha() for letter in pattern.value):
        value = _as_pattern(pattern.value) if isinstance(pattern, PatternStr) else _spaced(pattern.value)
        terminal.pattern = PatternRE(rf"(?i:(?:{value}){_BORDER})")
        terminal.priority = 1 + pattern.value.count(" ")
    return terminal


def _spaced(alternatives: str) -> str:
    return re.sub(r"(?:\\ | )", r"\\s+", alternatives)


@cache
def sentence_parser() -> Lark:
    """Lark's parser for the sentences of every section."""
    text = GRAMMAR_FILE.read_text(encoding="utf-8")
    return kept_tables(text) or keep_tables(text, _built(text))


def _built(text: str) -> Lark:
    return Lark(
        text,
        parser="lalr",
        lexer="basic",
        start=[start_symbol(section) for section in STARTS],
        maybe_placeholders=True,
        propagate_positions=True,
        edit_terminals=_edit,
    )


def parse_sentence(section: str, text: str) -> ParseTree:
    """The parse tree of one sentence of a section; raises lark.UnexpectedInput where it is none."""
    tree = sentence_tree(section, text)
    if tree is None:
        raise UnexpectedInput(f"no sentence of {section}: {text}")
    return tree


@lru_cache(maxsize=4_096)
def sentence_tree(section: str, text: str) -> ParseTree | None:
    """The parse tree of one sentence of a section, or None: a line that is none is asked of every section, often."""
    row, whole = _lexed(text)
    parsing = sentence_parser().parse_interactive(start=start_symbol(section))
    try:
        for token in row:
            parsing.feed_token(token)
        if not whole:
            return None
        tree: ParseTree = parsing.feed_eof(row[-1] if row else None)  # type: ignore[no-untyped-call]
    except UnexpectedToken:
        return None
    return tree


@lru_cache(maxsize=1_024)
def _lexed(text: str) -> tuple[tuple[Token, ...], bool]:
    """The tokens of a text, which are the same in every section, up to where there is none; whether these are all."""
    row: list[Token] = []
    try:
        row.extend(tokens(text))
    except UnexpectedCharacters:
        return tuple(row), False
    return tuple(row), True


def tokens(text: str) -> Iterator[Token]:
    """The tokens of a text; raises lark.UnexpectedCharacters where there is none.

    They come from the parser's own lexer: Lark.lex would build a new one each time.
    """
    begun = sentence_parser().parse_interactive(text, start=start_symbol(STARTS[0]))
    yield from begun.lexer_thread.lex(begun.parser_state)  # type: ignore[no-untyped-call]


def terminal_phrases(name: str) -> tuple[str, ...]:
    """The words that a terminal of the grammar stands for; none for names, numbers and the like."""
    if name in _OPEN_TERMINALS:
        return ()
    return _phrases_by_terminal().get(name, ())


@cache
def _phrases_by_terminal() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for phrase in reserved_phrases():
        token = next(tokens(phrase), None)
        if token is not None and len(token) == len(phrase):
            found.setdefault(token.type, []).append(phrase)
    return {name: tuple(sorted(phrases)) for name, phrases in found.items()}
