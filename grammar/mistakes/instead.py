"""What to write instead of a line that is no sentence: what of it can stay, what comes nearest, and how it stays on the
sheet for people."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lark import UnexpectedInput

from grammar.automaton import pieces
from grammar.language import parse_sentence
from grammar.mistakes.examples import nearest_examples
from grammar.mistakes.meant import nearest
from grammar.mistakes.wishes import GAMES, NOTHING_NEAR, near_rows, row_told
from grammar.own_names import MASK
from grammar.said import Chain, Value, listed, quoting, said
from grammar.words import capital

_APART = re.compile(r",? and |, ")
_LONG_NAME = re.compile("WORD WORD WORD WORD")
_CLOCK = re.compile(r"after (\d+(?:\.\d+)?) ?(min(?:utes?)?|s(?:ec(?:onds?)?)?)\b", re.IGNORECASE)
_UNITS = {"m": "min", "s": "s"}
PLAYS_ANOTHER, PLAYS_WITHOUT = "the check plays another game then", "the check plays without it"
OF_RULES = ("play", "when", "finish")
_DECIDES = re.compile(r"\b(?:points?|scores?|wins?|loses?|(?:throw|roll|kick|strike|push|carry|tow|touch|take)s?)\b")


def instead(section: str, text: str, stop: int, written: str) -> Value:
    """What to do about a line that stops at a letter to be a sentence of its section. `written` is as it stands."""
    kept = right_so_far(section, text, stop)
    if not kept:
        people = _with_clock(section, text, written) or _for_people(section, text, written, "it")
        return Chain((_nearest(section, text), *people))
    rest = _APART.sub("", text[len(kept) :], count=1)
    asked = f": {rest}" if section == "when" and ":" in kept else rest  # it is of what follows
    as_written = " ".join(written.split()[-len(rest.split()) :])
    people = _with_clock(section, kept, as_written) or _for_people(section, rest, written, "the rest")
    return Chain((quoting("`{kept}` is a sentence without the rest.", kept=kept), _nearest(section, asked), *people))


def right_so_far(section: str, text: str, stop: int) -> str:
    """The longest beginning of a line, up to a comma or an "and" before it stops, that is a sentence; or nothing."""
    if section not in GAMES or MASK in text:
        return ""
    ends = (match.start() for match in _APART.finditer(text) if match.start() <= stop)
    kept = (text[:end] for end in sorted(ends, reverse=True) if is_sentence(section, text[:end]))
    return next((each for each in kept if not holds_long_name(each)), "")


def holds_long_name(text: str) -> bool:
    """Whether so many words stand together as a name that they are rather a sentence that is not understood."""
    return _LONG_NAME.search(" ".join(each.kind for each in pieces(text))) is not None


def _nearest(section: str, asked: str) -> Value:
    """The constructs that come nearest to what is asked, each with its example and, if another, its section."""
    if section not in GAMES:
        return near_rows(nearest_examples(section, asked))
    found = nearest(section, asked)
    if found.rows and not found.unfulfilled:
        return near_rows(found.rows, section)
    wish = found.unfulfilled
    what = quoting("It cannot be said yet how {wish}.", wish=said(wish)) if wish else said(NOTHING_NEAR)
    if section not in OF_RULES:
        told = listed(map(row_told, nearest_examples(section, asked)), "or")
        return Chain((what, quoting("What stands there: {rows}.", rows=told)))
    return Chain((what, *([near_rows(found.rows, section)] if found.rows else [])))


def _for_people(section: str, unread: str, written: str, what: str) -> Iterator[Value]:
    """How a rule that cannot be said stays on the card: the whole line in quotes, for half a rule is none; and what the
    check makes of what it cannot read."""
    if section not in OF_RULES or '"' in written:
        return
    then = said(PLAYS_ANOTHER if _DECIDES.search(unread) else PLAYS_WITHOUT)
    put = "If nothing else says it, put it in quotes under `play`, for people ({then}): {line}"
    if what != "it":
        put = "If nothing else says the rest, put the whole line in quotes under `play`, for people ({then}): {line}"
    yield quoting(put, then=then, line=f'"{capital(written)}."')


def _with_clock(section: str, begun: str, rest: str) -> tuple[Value, ...]:
    """The line of the clock that is read, and what of it stays for people: without it nothing ends the round.

    Nothing where the line does not begin with a time, or is in quotes already.
    """
    clock = _CLOCK.match(begun) if section == "finish" and '"' not in rest else None
    if clock is None:
        return ()
    offered = (f"{begun}, else a draw", begun, f"after {clock[1]} {_UNITS[clock[2][0].lower()]}: nobody wins")
    line = next(each for each in offered if is_sentence("finish", each))
    then = said(PLAYS_ANOTHER if _DECIDES.search(rest) else PLAYS_WITHOUT)
    put = (
        "If nothing else says the rest, write `{line}`, so that the clock still ends the round, and in quotes under "
        "`play`, for people ({then}): {rest}"
    )
    told = quoting(put, line=line, then=then, rest=f'"{capital(rest)}."')
    if not begun.endswith("more points wins"):
        return (told,)
    return (quoting("Where the next point is to decide: {line}.", line=f"`{begun}, else the next point wins`"), told)


def is_sentence(section: str, text: str) -> bool:
    """Whether a line is one of a section; a text in quotes is only of those that have such."""
    try:
        parse_sentence(section, text)
    except UnexpectedInput:
        return False
    return not re.fullmatch(r'"[^"]*"', text.strip()) or section in ("care", "play")
