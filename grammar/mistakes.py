"""What to say of a line that is no sentence of its section: what was found, what could stand there,
and, where a small change makes it a sentence, the line as it should be."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from difflib import SequenceMatcher

from lark import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from grammar.finding import Finding, Severity
from grammar.language import STARTS, parse_sentence, reserved_phrases, terminal_phrases
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
    "POSSESSIVE": "whose it is (such as `the thrower's`)",
    "$END": "the end of the line",
    "COMMA": "a comma",
    "COLON": "a colon",
    "LPAR": "a bracket `(`",
    "RPAR": "a bracket `)`",
}
EXAMPLES = {
    "head": "ages 8 to 12",
    "space": "court 18 m by 9 m, halved across",
    "sides": "north and south, 6 to 14 players each, mirrored",
    "kit": "8 foam balls",
    "set-up": "4 foam balls in each half",
    "play": "players roll a foam ball at the cones of the other side",
    "when": "a player is hit: that player waits in the queue",
    "finish": "a side wins when the other side has no cones standing",
    "care": '"Aim below the shoulder."',
    "modifier": "heading task",
}
_MOST_EXPECTED = 5
_MOST_TRIES = 60


def mistake(error: UnexpectedInput, section: str, text: str, span: Span, column_of: Callable[[int], int]) -> Finding:
    """The finding for a sentence that Lark refused. `column_of` turns columns of `text` into the file's."""
    column, found = _found(error, text)
    place = Span(span.file, span.line, column_of(column), column_of(column) + max(len(found), 1))
    mended = _mended(section, text, column)
    expected = _expected(error)
    elsewhere = None if mended else _section_that_takes(text, section)
    what = f"`{found}`" if found else "the end of the line"
    title = f"This line cannot go on with {what}" if found else "This line stops too soon"
    title += f": {expected} could stand here." if expected else "."
    code = "L-sentence"
    if elsewhere:
        code = "L-wrong-section"
        title, hint = f"This sentence does not belong under `{section}`.", f"Move it to `{elsewhere}`."
        place = span
    elif mended:
        hint = f"Write: {mended}"
    else:
        hint = f"A line of this section is, for example: {EXAMPLES[section]}"
    return Finding(code, Severity.ERROR, title, place, hint)


def _found(error: UnexpectedInput, text: str) -> tuple[int, str]:
    if isinstance(error, UnexpectedToken) and error.token.type != "$END":
        return error.token.column or 1, str(error.token)
    if isinstance(error, UnexpectedCharacters):
        word = re.match(r"[\w'’-]+|.", text[error.column - 1 :])
        return error.column, word.group() if word else ""
    return len(text) + 1, ""


def _expected(error: UnexpectedInput) -> str:
    if not isinstance(error, UnexpectedToken):
        return ""
    accepted = error.accepts or error.expected
    sorts = [_SORTS[name] for name in _SORTS if name in accepted]
    phrases = [terminal_phrases(name) for name in sorted(accepted) if name not in _SORTS]
    said = [f"`{words[0]}`" for words in phrases if words]
    return listing((sorts + said)[:_MOST_EXPECTED], "or")


def _progress(section: str, text: str) -> int | None:
    """None where the text is a sentence; else the column at which it stops being one."""
    try:
        parse_sentence(section, text)
    except UnexpectedInput as error:
        return _found(error, text)[0]
    return None


def _mended(section: str, text: str, column: int) -> str | None:
    """The line with one word or phrase spelled as the language spells it, if that makes it a sentence."""
    best: tuple[int, str] | None = None
    for tried, candidate in enumerate(_respelled(text, column)):
        if tried >= _MOST_TRIES:
            break
        reached = _progress(section, candidate)
        if reached is None:
            return candidate
        if reached > column + 6 and (best is None or reached > best[0]):
            best = (reached, candidate)
    return None


def _respelled(text: str, column: int) -> Iterator[str]:
    words = [match for match in re.finditer(r"[^\W\d_][\w'’-]*", text) if match.start() < column + 24]
    nearest_first = sorted(range(len(words)), key=lambda index: abs(words[index].start() + 1 - column))
    scored: list[tuple[float, int, str]] = []
    for order, first in enumerate(nearest_first[:12]):
        for length in (1, 2, 3):
            if first + length > len(words):
                break
            start, end = words[first].start(), words[first + length - 1].end()
            said = " ".join(text[start:end].lower().split())
            for phrase in reserved_phrases():
                likeness = _likeness(said, phrase)
                if likeness and said != phrase:
                    scored.append((-likeness, order, text[:start] + phrase + text[end:]))
    scored.sort()
    for _, _, candidate in scored:
        yield candidate


def _likeness(said: str, phrase: str) -> float:
    if abs(len(said) - len(phrase)) > 2 or len(said) < 3:
        return 0.0
    ratio = SequenceMatcher(None, said, phrase).ratio()
    return ratio if ratio >= 0.72 else 0.0


def _section_that_takes(text: str, section: str) -> str | None:
    if section == "modifier":
        return None
    for other in STARTS:
        if other not in (section, "modifier") and _progress(other, text) is None:
            return other
    return None
