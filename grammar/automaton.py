"""The parsing table walked by kinds of words alone, without making trees: how far does a row of words
go as a sentence, and what may come next?

A stack is the row of states of an LALR parser (Lark's table). Stacks are never changed, so many ways of
going on can be tried from one point.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from lark import UnexpectedCharacters
from lark.parsers.lalr_analysis import Shift

from grammar.frozen import frozen
from grammar.language import sentence_parser, start_symbol, terminal_phrases, tokens

Stack = tuple[int, ...]
END = "$END"
STRANGE = "?"


@frozen
class Piece:
    """A word, phrase, number or sign of a line. `kind` is its terminal in rules.lark, or "?" where it is
    no part of the language; `start` and `end` count letters from 0."""

    kind: str
    text: str
    start: int
    end: int


def pieces(text: str) -> list[Piece]:
    """The line cut into pieces; letters that the language does not know are pieces of their own."""
    return list(_pieces(text))


@lru_cache(maxsize=1_024)
def _pieces(text: str) -> tuple[Piece, ...]:
    found: list[Piece] = []
    offset = 0
    while offset < len(text):
        try:
            for token in tokens(text[offset:]):
                start = token.start_pos or 0
                found.append(Piece(token.type, str(token), offset + start, offset + start + len(token)))
            return tuple(found)
        except UnexpectedCharacters as error:
            start = offset + (error.pos_in_stream or 0)
            strange = re.match(r"[\w'’-]+|.", text[start:])
            end = start + (len(strange.group()) if strange else 1)
            found.append(Piece(STRANGE, text[start:end], start, end))
            offset = end
    return tuple(found)


def beginning(section: str) -> Stack:
    """The stack before the first word of a sentence of that section."""
    return (_table(section)[0],)


def after(section: str, stack: Stack, kind: str) -> Stack | None:
    """The stack when a piece of that kind follows, or None where it cannot."""
    _first, last, states = _table(section)
    while True:
        step = states[stack[-1]].get(kind)
        if step is None:
            return None
        action, argument = step
        if action is Shift:
            return (*stack, argument)
        if argument.expansion:
            stack = stack[: -len(argument.expansion)]
        stack = (*stack, states[stack[-1]][argument.origin.name][1])
        if kind == END and stack[-1] == last:
            return stack


@lru_cache(maxsize=4_096)
def possible(section: str, stack: Stack) -> tuple[str, ...]:
    """The kinds that can follow, by their words; END where the sentence may stop."""
    kinds = sorted(_table(section)[2][stack[-1]], key=lambda kind: (phrases_of(kind), kind))
    return tuple(
        kind for kind in kinds if (kind.isupper() or kind == END) and after(section, stack, kind) is not None
    )


def reach(section: str, line: list[Piece]) -> tuple[int, Stack]:
    """How many pieces of a line can stand as they are, and the stack after them."""
    stack = beginning(section)
    for index, piece in enumerate(line):
        following = after(section, stack, piece.kind)
        if following is None:
            return index, stack
        stack = following
    return len(line), stack


@cache
def _table(section: str) -> tuple[int, int, dict[int, dict[str, tuple]]]:  # type: ignore[type-arg]
    conf = sentence_parser().parse_interactive("", start=start_symbol(section)).parser_state.parse_conf
    return conf.start_state, conf.end_state, conf.states


@cache
def phrases_of(kind: str) -> tuple[str, ...]:
    """The words that a kind stands for; the signs for a colon, a comma and a bracket."""
    signs = {"COLON": ":", "COMMA": ",", "LPAR": "(", "RPAR": ")"}
    return (signs[kind],) if kind in signs else terminal_phrases(kind)
