"""What to say of a line that is no sentence of its section: what was found, what could stand there, and
the line as it should be where that can be seen."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence

import attrs

from grammar.automaton import END, phrases_of, possible
from grammar.finding import Correction, Finding, mistake
from grammar.frozen import frozen
from grammar.language import SHEETS, STARTS
from grammar.lines import TextLine
from grammar.mistakes.examples import usual_words
from grammar.mistakes.instead import holds_long_name, instead, is_sentence
from grammar.mistakes.meant import nearest
from grammar.mistakes.mended import Mended, one_change_away, one_of_each, ways_to_mend
from grammar.mistakes.stops import MOST_SAID, Stop, later_stop, stop_of
from grammar.mistakes.wishes import NOTHING_NEAR, near_rows
from grammar.parameters import Filled, filled_in
from grammar.said import Value, listed, quoting, said
from grammar.span import Span

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
_SURE = 0.5
OF_SECTIONS = "It is a sentence of {places}."
_OTHER_WORD = "Put the name in quotes where it is declared, or take another word for it."
_ELSEWHERE_COST = 0.45


@frozen
class Slip:
    """A mistake in a line, and the line as it was probably meant; `lost` where a sentence is missing now."""

    finding: Finding
    meant: Filled | None = None
    lost: bool = True


def slip(
    section: str,
    line: TextLine,
    values: tuple[tuple[str, str], ...],
    file: str,
    seek: bool,
    ways: Iterable[str],
    written: str,
    known: Callable[[str], bool],
) -> Slip:
    """The mistake of a line that is no sentence, with what it may have been meant to be.

    Without `seek` no better line is sought, which is quick. `values` has the words of a value for each parameter;
    `ways` has the line in other words, in which it may go farther; `written` is the line as its author has it; `known`
    says of a section whether all names of the line mean something in a sentence of it.
    """
    text, span = line.text, line.span(file)
    note = re.match(r"(?:#|//|--|;)\s*", text)
    if note:
        title = quoting("A note begins with `note:`, not with `{sign}`.", sign=note.group().strip())
        meant = Correction(span, f"note: {text[note.end() :]}")
        hint = "Put `note:` before what is not to be read."
        return Slip(mistake("L-note", title, span, hint, corrections=(meant,)), lost=False)
    counted = re.match(r"\d+(?:st|nd|rd|th)? (?=[^:,]*:)", text) if section == "space" else None
    if counted:
        title = quoting("A name begins with a letter, not with `{sign}`.", sign=counted.group().strip())
        hint = "Write its number as a word, such as `first base`, here and wherever the name stands."
        return Slip(mistake("L-name", title, span, hint))
    filled = filled_in(text, dict(values))
    found = ways_to_mend(section, text, dict(values)) if seek else ()
    moved = tuple(_elsewhere(section, text, span)) if seek and not (found and found[0].cost <= _SURE) else ()
    changed = one_change_away(section, text, dict(values)) if seek else ()
    corrections = (*(_mended(each, span) for each in one_of_each((*found, *changed))), *moved)
    if found and not found[0].sure:
        wrong = mistake("L-sentence", corrections[0].title, corrections[0].mark or span, _OTHER_WORD)
    elif here := [each for each in moved if each.line == text and not holds_long_name(text) and known(each.section)]:
        places = listed((f"`{each.section}`" for each in here), "or")
        wrong = mistake(here[0].code, here[0].title, span, quoting(OF_SECTIONS, places=places))
    else:
        wrong = _stopped(section, filled, span, ways, written)
    sure = bool(found) and found[0].sure and not (moved and found[0].cost > _SURE)
    return Slip(attrs.evolve(wrong, corrections=corrections), found[0].filled if sure else None, lost=not sure)


def _mended(found: Mended, span: Span) -> Correction:
    start = span.column + found.start
    mark = Span(span.file, span.line, start, max(start + 1, span.column + found.end))
    return Correction(
        span, found.line, found.cost, title=quoting("{what}.", what=found.what), mark=mark, sure=found.sure
    )


def _stopped(section: str, filled: Filled, span: Span, ways: Iterable[str], written: str) -> Finding:
    text = filled.text
    stops = {way: stop_of(section, way) for way in (text, *ways)}
    stop, farthest = stops[text], min(stops, key=lambda way: len(way) - stops[way].start)
    tail = farthest[stops[farthest].start :]
    if len(tail) < len(text) - stop.start and text.endswith(tail):
        stop = attrs.evolve(stops[farthest], start=len(text) - len(tail))
    return _told(section, filled, span, stop, instead(section, text, stop.start, written))


def later_mistake(section: str, text: str, stop: int, span: Span, ways: Sequence[str]) -> Iterator[Finding]:
    """What is wrong with the rest of a line behind letter `stop`, whatever stands before it; `ways` as for `slip`."""
    later = later_stop(section, text, stop, ways)
    if later:
        rows = nearest(section, text[later.start :]).rows
        hint = near_rows(rows) if rows else said(NOTHING_NEAR)
        yield _told(section, Filled(text, {}), span, later, hint)


def _told(section: str, filled: Filled, span: Span, stop: Stop, hint: Value) -> Finding:
    start = span.column - 1 + filled.column(stop.start + 1)
    sorts = stop.expected or list(_said(section, possible(section, stop.stack)))[:MOST_SAID]
    if sorts:
        title = "This line cannot go on with `{stop}`: {sorts} could stand here."
        title = title if stop.text else "This line stops too soon: {sorts} could stand here."
    else:
        title = "This line cannot go on with `{stop}`." if stop.text else "This line stops too soon."
    told = quoting(title, stop=stop.text, sorts=listed(sorts, "or"))
    place = Span(span.file, span.line, start, start + max(1, len(stop.text)))
    return mistake("L-sentence", told, place, hint)


def _said(section: str, kinds: Iterable[str]) -> Iterator[Value]:
    """What could stand there, in words: sorts of words first, then the words themselves."""
    rest = set(kinds) - _NOT_SAID
    for kind, sort in _SORTS.items():
        if kind in rest:
            yield said(sort)
    if rest & _PLACES:
        yield said("where (such as `in`, `on` or `behind`)")
    usual = usual_words(section)
    words = [min(phrases, key=lambda phrase: (phrase not in usual, phrase == "are"))
             for kind in rest - _PLACES - _SORTS.keys() if (phrases := phrases_of(kind))]  # fmt: skip
    yield from (f"`{word}`" for word in sorted(words, key=lambda word: (word not in usual, word)))


def _elsewhere(section: str, text: str, span: Span) -> Iterator[Correction]:
    """The line as a sentence of another section."""
    if section in SHEETS:
        return
    title = quoting("This sentence does not belong under `{section}`.", section=section)
    others = [other for other in STARTS if other not in (section, *SHEETS)]
    places = [other for other in others if is_sentence(other, text)]
    for place in places:
        yield Correction(span, text, _SURE, "L-wrong-section", title, span, place)
    for place in others if not places else ():
        if place != "care":
            for found in ways_to_mend(place, text, {}, _ELSEWHERE_COST)[:1]:
                yield Correction(span, found.line, _SURE + found.cost, "L-wrong-section", title, span, place)
