"""The pieces of a line → the tree of rules that they make: an LALR parser run by Lark's tables."""

from __future__ import annotations

from typing import Union

from grammar.frozen import evolve, frozen
from grammar.pieces import NoSentenceError, Piece, pieces_of
from grammar.tables import Rule, Tables

END = "$END"


@frozen
class Branch:
    """What a rule of rules.lark made of its parts; `start` and `end` count letters from 0, None where it has none.

    Children that were left unsaid are None.
    """

    rule: str
    children: tuple[Child, ...]
    start: int | None = None
    end: int | None = None


Child = Union[Branch, Piece, None]
# A child with the letters from which to which it goes, those of signs included that are not kept in it.
_Held = tuple[Child, int | None, int | None]


def parsed(tables: Tables, symbol: str, text: str) -> Child:
    """The tree of a text that is what a start symbol stands for; raises NoSentenceError where it is not."""
    first, last = tables.starts[symbol]
    states, held = [first], list[_Held]()
    for piece in (*pieces_of(tables, text), Piece(END, "", len(text), len(text))):
        while True:
            step = tables.rows[states[-1]].get(piece.kind)
            if step is None:
                raise NoSentenceError
            if step >= 0:
                states.append(step)
                held.append((piece, piece.start, piece.end))
                break
            rule = tables.rules[~step]
            whole = len(held) - rule[1]
            made = _made(rule, held[whole:])
            del states[whole + 1 :], held[whole:]
            states.append(tables.rows[states[-1]][rule[0]])
            held.append(made)
            if states[-1] == last and piece.kind == END:
                return made[0]
    raise AssertionError("nothing follows the end")


def _made(rule: Rule, parts: list[_Held]) -> _Held:
    """What a rule makes of its parts."""
    _, _, name, one_stands_for_it, kept, unsaid_after = rule
    children: list[Child] = []
    for place, only_what_is_in_it, unsaid in kept:
        children += [None] * unsaid
        child = parts[place][0]
        if only_what_is_in_it and isinstance(child, Branch):
            children += child.children
        else:
            children.append(child)
    children += [None] * unsaid_after
    start = next((each[1] for each in parts if each[1] is not None), None)
    end = next((each[2] for each in reversed(parts) if each[2] is not None), None)
    if not one_stands_for_it or len(children) != 1:
        return Branch(name, tuple(children), start, end), start, end
    (child,) = children
    if isinstance(child, Branch):
        return (evolve(child, start=start, end=end) if child.start is None else child), start, end
    return child, *((child.start, child.end) if child else (None, None))
