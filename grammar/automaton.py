"""The parsing table walked by kinds of words alone, without making trees: how far does a row of words
go as a sentence, and what may come next?

A stack is the row of states of an LALR parser. Stacks are never changed, so many ways of
going on can be tried from one point.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from grammar.frozen import evolve
from grammar.language import language_tables, pieces_in, start_symbol, terminal_phrases
from grammar.parse_tree import END
from grammar.pieces import Piece, StrangeError

Stack = tuple[int, ...]
STRANGE = "?"


def pieces(text: str) -> list[Piece]:
    """The line cut into pieces; letters that the language does not know are pieces of their own."""
    found: list[Piece] = []
    offset = 0
    while offset < len(text):
        try:
            for piece in pieces_in(text[offset:]):
                found.append(evolve(piece, start=offset + piece.start, end=offset + piece.end))
            return found
        except StrangeError as error:
            start = offset + error.start
            strange = re.match(r"[\w'’-]+|.", text[start:])
            end = start + (len(strange.group()) if strange else 1)
            found.append(Piece(STRANGE, text[start:end], start, end))
            offset = end
    return found


def beginning(section: str) -> Stack:
    """The stack before the first word of a sentence of that section."""
    return (language_tables().starts[start_symbol(section)][0],)


def after(section: str, stack: Stack, kind: str) -> Stack | None:
    """The stack when a piece of that kind follows, or None where it cannot."""
    tables = language_tables()
    last = tables.starts[start_symbol(section)][1]
    while True:
        step = tables.rows[stack[-1]].get(kind)
        if step is None:
            return None
        if step >= 0:
            return (*stack, step)
        rule, size = tables.rules[~step][:2]
        stack = stack[: len(stack) - size]
        stack = (*stack, tables.rows[stack[-1]][rule])
        if kind == END and stack[-1] == last:
            return stack


def possible(section: str, stack: Stack) -> Iterator[str]:
    """The kinds that can follow, by their words; END where the sentence may stop."""
    for kind in sorted(language_tables().rows[stack[-1]], key=lambda kind: (phrases_of(kind), kind)):
        if (kind.isupper() or kind == END) and after(section, stack, kind) is not None:
            yield kind


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
def phrases_of(kind: str) -> tuple[str, ...]:
    """The words that a kind stands for; the signs for a colon, a comma and a bracket."""
    signs = {"COLON": ":", "COMMA": ",", "LPAR": "(", "RPAR": ")"}
    return (signs[kind],) if kind in signs else terminal_phrases(kind)
