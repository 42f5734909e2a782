"""What to say of a line that is no sentence of its section: what was found, what could stand there, and
the line as it should be where that can be seen."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from attrs import frozen
from lark import UnexpectedInput

from grammar.automaton import END, Piece, phrases_of, pieces, possible, reach
from grammar.examples import nearest_example, usual_words
from grammar.finding import Finding, Severity
from grammar.language import SHEETS, STARTS, parse_sentence
from grammar.lines import TextLine
from grammar.mended import Mended, mended
from grammar.parameters import Filled, filled_in
from grammar.span import Span
from grammar.words import listing

_SORTS = {
    "WORD": "a name",
    "NUMBER": "a number",
    "LENGTH": "a length (such as `2 m`)",
    "DURATION": "a time (such as `10 s` or `6 min`)",
    "PERCENT": "a percentage (such as `75 %`)",
    "STRING": 'words in quotes (such as "Aim low.")',
    "LICENCE": "a licence (such as `CC-BY-4.0`)",
    "COLON": "a colon",
    "COMMA": "a comma",
    "SKILL": "what they do (such as `roll` or `overarm throw`)",
    "DET": "a word such as `the` or `each`",
    END: "the end of the line",
}
_PLACES = frozenset(("IN", "ON", "BEHIND", "BEFORE", "BESIDE", "ACROSS", "ALONG", "BETWEEN"))
_NOT_SAID = frozenset(("POSSESSIVE", "LPAR", "RPAR", "COURT", "OTHER", "OF", "SIDE_LINE", "PARTS", "THING", "SIZE"))
_MOST_SAID = 5
_SURE = 0.5
_ELSEWHERE_COST = 0.45


@frozen
class Slip:
    """A mistake in a line, and the line as it was probably meant; `lost` where a sentence is missing now."""

    finding: Finding
    meant: Filled | None = None
    lost: bool = True


def slip(section: str, line: TextLine, values: Mapping[str, str], file: str, seek: bool = True) -> Slip:
    """The mistake of a line that is no sentence. Without `seek` no better line is sought, which is quick."""
    text, span = line.text, line.span(file)
    note = re.match(r"(?:#|//|--|;)\s*", text)
    if note:
        hint = f"Write: note: {text[note.end() :]}"
        title = f"A note begins with `note:`, not with `{note.group().strip()}`."
        return Slip(Finding("L-note", Severity.ERROR, title, span, hint), lost=False)
    filled = filled_in(text, values)
    found = mended(section, text, values) if seek else None
    if found and found.cost <= _SURE:
        return _mended(found, span)
    elsewhere = _elsewhere(section, text, span) if seek else None
    if elsewhere:
        return Slip(elsewhere)
    if found:
        return _mended(found, span)
    return Slip(_stopped(section, filled, span))


def _mended(found: Mended, span: Span) -> Slip:
    start = span.column + found.start
    place = Span(span.file, span.line, start, max(start + 1, span.column + found.end))
    hint = f"Write: {found.line}" if found.sure else f"Take another word for it, or write: {found.line}"
    finding = Finding("L-sentence", Severity.ERROR, f"{found.what}.", place, hint)
    return Slip(finding, found.filled, lost=False) if found.sure else Slip(finding)


def _stopped(section: str, filled: Filled, span: Span) -> Finding:
    row = pieces(filled.text)
    count, stack = reach(section, row)
    piece = row[count] if count < len(row) else Piece(END, "", len(filled.text), len(filled.text))
    start = span.column - 1 + filled.column(piece.start + 1)
    expected = listing(list(_said(section, possible(section, stack)))[:_MOST_SAID], "or")
    title = f"This line cannot go on with `{piece.text}`" if piece.text else "This line stops too soon"
    title += f": {expected} could stand here." if expected else "."
    hint = f"A line of this section is, for example: {nearest_example(section, filled.text)}"
    place = Span(span.file, span.line, start, start + max(1, len(piece.text)))
    return Finding("L-sentence", Severity.ERROR, title, place, hint)


def _said(section: str, kinds: Iterator[str]) -> Iterator[str]:
    """What could stand there, in words: sorts of words first, then the words themselves."""
    rest = set(kinds) - _NOT_SAID
    for kind, said in _SORTS.items():
        if kind in rest:
            yield said
    if rest & _PLACES:
        yield "where (such as `in`, `on` or `behind`)"
    usual = usual_words(section)
    words = [min(phrases, key=lambda phrase: phrase not in usual) for kind in rest - _PLACES - _SORTS.keys()
             if (phrases := phrases_of(kind))]  # fmt: skip
    yield from (f"`{word}`" for word in sorted(words, key=lambda word: (word not in usual, word)))


def _elsewhere(section: str, text: str, span: Span) -> Finding | None:
    """The line as a sentence of another section."""
    if section in SHEETS:
        return None
    others = [other for other in STARTS if other not in (section, *SHEETS)]
    places = [other for other in others if _is_sentence(other, text)]
    hint = f"Move it to {listing([f'`{place}`' for place in places], 'or')}."
    if not places:
        near = [
            (found.cost, other, found)
            for other in others
            if other != "care" and (found := mended(other, text, {}, _ELSEWHERE_COST))
        ]
        if not near:
            return None
        _, place, found = min(near, key=lambda each: each[0])
        hint = f"Move it to `{place}` and write: {found.line}"
    title = f"This sentence does not belong under `{section}`."
    return Finding("L-wrong-section", Severity.ERROR, title, span, hint)


def _is_sentence(section: str, text: str) -> bool:
    try:
        parse_sentence(section, text)
    except UnexpectedInput:
        return False
    return not re.fullmatch(r'"[^"]*"', text.strip()) or section in ("care", "play")
