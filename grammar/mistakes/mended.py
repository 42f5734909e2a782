"""A line that is no sentence → the nearest one that is, written out for the teacher."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from lark import UnexpectedInput

from grammar.automaton import pieces
from grammar.from_lark import Reader
from grammar.frozen import evolve, frozen
from grammar.heard.rewrite import Rewrite, choices, rewrites, rewritten
from grammar.language import parse_sentence
from grammar.mistakes.one_change import one_change
from grammar.mistakes.repair import MOST_COST, Change, Repair, repairs
from grammar.mistakes.sense import keeps_the_sense
from grammar.parameters import Filled, filled_in
from grammar.said import Capital, Value, Written, listed, quoting, said
from grammar.sentences.base import Node
from grammar.span import nowhere

_SIGNS = {":": "a colon", ",": "a comma", "(": "a bracket", ")": "a bracket"}
_OF_PLACES = ("space", "set-up", "play")
_OUTSIDE = re.compile(r"\boutside\b", re.IGNORECASE)  # no sentence has it, and "in" would turn it round
_MOST_WORDINGS = 12
_MOST_LETTERS = 160
_MOST_WAYS = 10


@frozen
class Mended:
    """A line as it should be.

    `line` is to be shown, `filled` the same with values for parameters. `start` and `end` say which
    letters of the line as written (from 0) are changed first, `what` says all changes. Not `sure`:
    the name in it was meant otherwise. `wording` is the sentence in its canonical words.
    """

    line: str
    wording: str
    filled: Filled
    what: Value
    start: int
    end: int
    cost: float
    sure: bool = True


def mended(section: str, line: str, values: Mapping[str, str], most_cost: float = MOST_COST) -> Mended | None:
    """The nearest sentence of the section, or None where none is near."""
    return next(iter(ways_to_mend(section, line, values, most_cost)), None)


def ways_to_mend(
    section: str, line: str, values: Mapping[str, str], most_cost: float = MOST_COST
) -> tuple[Mended, ...]:
    """The sentences of the section that are near, the nearest first; long lines are not looked at."""
    if len(line) > _MOST_LETTERS or (section in _OF_PLACES and _OUTSIDE.search(line)):
        return ()
    found: dict[str, Mended] = {}
    known = list(rewrites(section, line))[:_MOST_WORDINGS]
    for chosen in ((), *choices(known)):
        spent = sum({rewrite.wording: rewrite.cost for rewrite in chosen}.values())
        filled = filled_in(rewritten(line, chosen), values)
        row = pieces(filled.text)
        limit = most_cost - spent
        for repair in repairs(section, row, limit) if limit > 0 else ():
            if (repair.changes or chosen) and _keeps_the_sense(repair):
                way = _written_out(section, filled, values, chosen, repair, spent + repair.cost)
                if way and (way.line not in found or way.cost < found[way.line].cost):
                    found[way.line] = way
    return tuple(sorted(one_of_each(found.values()), key=lambda way: way.cost)[:_MOST_WAYS])


def one_change_away(section: str, line: str, values: Mapping[str, str]) -> Iterator[Mended]:
    """The sentences of the section that need one change, however the words are spelled."""
    filled = filled_in(line, values)
    for repair in one_change(section, pieces(filled.text)) if len(line) <= _MOST_LETTERS else ():
        way = _written_out(section, filled, values, (), repair, repair.cost) if _keeps_the_sense(repair) else None
        if way:
            yield way


def one_of_each(ways: Iterable[Mended]) -> list[Mended]:
    """Of lines that are one sentence in its canonical words ("10 point", "10 points") one: those words, else the
    nearest."""
    alike = dict[str, list[Mended]]()
    for way in ways:
        alike.setdefault(way.wording, []).append(way)
    return [
        evolve(min(same, key=lambda way: (way.line != wording, way.cost)), cost=min(way.cost for way in same))
        for wording, same in alike.items()
    ]


def _keeps_the_sense(repair: Repair) -> bool:
    return all(change.doubled or keeps_the_sense(change.old, change.new) for change in repair.changes)


def _written_out(
    section: str, filled: Filled, values: Mapping[str, str], chosen: Sequence[Rewrite], repair: Repair, cost: float
) -> Mended | None:
    line = _joined([filled.parameters.get(piece.start + 1, piece.text) for piece in repair.pieces])
    again = filled_in(line, values)
    try:
        tree = parse_sentence(section, again.text)
    except UnexpectedInput:
        return None
    sentence: Node = Reader(nowhere(), lambda column: column, again.parameters).node(tree)
    told = [_said(rewrite) for rewrite in chosen] + [_said(change) for change in repair.changes]
    if chosen:
        start, end = chosen[0].start, chosen[0].end
    else:
        first = min(repair.changes, key=lambda change: change.start)
        start, end = filled.column(first.start + 1) - 1, filled.column(first.end + 1) - 1
    what = Capital(listed(dict.fromkeys(told)))
    sure = not any(change.of_the_language for change in repair.changes)
    return Mended(line, sentence.words(), again, what, start, end, cost, sure)


def _joined(texts: Sequence[str]) -> str:
    line = ""
    for text in texts:
        line += text if text in (",", ":", ")") or not line or line.endswith("(") else f" {text}"
    return line


def _said(change: Rewrite | Change) -> Value:
    """ "`secs` is written `s`", "a colon is missing", "`the` stands twice"."""
    old, new = change.old.strip(), change.new.strip()
    if isinstance(change, Rewrite) and change.said:
        return said(change.said)
    if isinstance(change, Change) and change.doubled:
        return quoting("`{old}` stands twice", old=old)
    if isinstance(change, Change) and change.of_the_language:
        return quoting("`{old}` is a word of the language, which a name has only in quotes", old=old)
    if not old:
        sign = said(_SIGNS[new]) if new in _SIGNS else Written(f"`{new}`")
        return quoting("{sign} is missing", sign=sign)
    return quoting("`{old}` is written `{new}`" if new else "`{old}` has no place here", old=old, new=new)
