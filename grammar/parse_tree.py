"""A sentence's words → its parse tree, by the tables of the language."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Union

from grammar.frozen import frozen
from grammar.tables import END, Part, Tables
from grammar.tokens import NoSentenceError, Token

Child = Union["Tree", Token, None]


@frozen
class Tree:
    """A node of the parse tree: `rule` is the name of its rule, None among the children is what may stand there.

    It reaches from letter `start` to before `end` (from 0; -1 where it is of no words), and together with the signs
    around it that it leaves out, from `outer_start` to before `outer_end`.
    """

    rule: str
    children: tuple[Child, ...]
    start: int
    end: int
    outer_start: int
    outer_end: int


def parse_tree(by: Tables, kind: str, tokens: Iterable[Token]) -> Child:
    """The tree of a sentence of a kind; raises NoSentenceError where the words are none."""
    first, last = by.starts[kind]
    growing = _Growing(by, first)
    end = 0
    for token in tokens:
        growing.complete(token.kind, token.start)
        growing.take(token)
        end = token.end
    growing.complete(END, end, last)
    return growing.values[-1]


class _Growing:
    """What a parser has read so far: its states, and the nodes and words behind them."""

    def __init__(self, by: Tables, first: int) -> None:
        self._by = by
        self._states = [first]
        self.values: list[Child] = []

    def take(self, token: Token) -> None:
        """Go on by a word that may stand here."""
        self._states.append(self._by.states[self._states[-1]][token.kind])
        self.values.append(token)

    def complete(self, kind: str, at: int, last: int | None = None) -> None:
        """Make the nodes that end before a word of this kind, or all until the `last` state."""
        states, by = self._states, self._by
        while states[-1] != last:
            step = by.states[states[-1]].get(kind)
            if step is None:
                raise NoSentenceError(at)
            if step >= 0:
                return
            name, size, node, parts, missing, single = by.rules[-1 - step]
            first = len(self.values) - size
            made = _node(node, _children(parts, missing, self.values[first:]), self.values[first:], single)
            del self.values[first:], states[first + 1 :]
            self.values.append(made)
            states.append(by.states[states[-1]][name])


def _children(parts: Iterable[Part], missing: int, values: Sequence[Child]) -> tuple[Child, ...]:
    """Of the parts of a rule those that its node keeps, and None for what may stand there and does not."""
    found: list[Child] = []
    for number, in_its_place, before in parts:
        found += [None] * before
        value = values[number]
        found += value.children if in_its_place and isinstance(value, Tree) else (value,)
    return (*found, *[None] * missing)


def _node(rule: str, children: tuple[Child, ...], values: Sequence[Child], single: bool) -> Child:
    """The node of a rule; where an only child stands for it, that child with all that is around it."""
    starts = [start for value in values if (start := _outer(value)[0]) >= 0]
    ends = [end for value in values if (end := _outer(value)[1]) >= 0]
    start, end = (starts[0], ends[-1]) if starts else (-1, -1)
    if not single or len(children) != 1:
        return Tree(rule, children, start, end, start, end)
    (only,) = children
    if not isinstance(only, Tree) or not starts:
        return only
    own = (only.start, only.end) if only.start >= 0 else (start, end)
    return Tree(only.rule, only.children, *own, start, end)


def _outer(value: Child) -> tuple[int, int]:
    if isinstance(value, Tree):
        return value.outer_start, value.outer_end
    return (-1, -1) if value is None else (value.start, value.end)
