"""A line that is no sentence, read in whatever words make most of it: what it was meant to say, and its mistake."""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import SequenceMatcher

import attrs

from grammar.belonging import sentences_of
from grammar.finding import Finding, retold
from grammar.heard.heard import otherwise
from grammar.heard.words import in_words_of_the_language
from grammar.line_reading import LineReader
from grammar.lines import TextLine
from grammar.mistakes.instead import OF_RULES, is_sentence, right_so_far
from grammar.mistakes.lost import LostLine
from grammar.mistakes.mistakes import later_mistake, slip
from grammar.mistakes.stops import stop_of, words_left
from grammar.own_names import Masked, holds, unmasked, ways_to_mask
from grammar.parameters import Filled
from grammar.said import Value, rewritten
from grammar.sentences.base import Node
from grammar.span import Span

_MOST_OTHER_WORDS = 3
_IN_A_PART = re.compile(r"in the (?:first|last) .*", re.IGNORECASE)
_A_MOMENT = "after 1 s"
_WORDS = re.compile(r"[\w'-]+|[,:]")


def guessed(
    reader: LineReader, section: str, line: TextLine, values: tuple[tuple[str, str], ...], seek: bool
) -> tuple[tuple[Node, ...], tuple[Finding, ...], LostLine | None]:
    """What a line that is no sentence was probably meant to say, its mistakes, and what is lost by it."""
    own = reader.names.own
    masked, names = Masked(line.text), tuple[str, ...]()
    if holds(line.text, own):
        masked, names = next(ways_to_mask(line.text, own))
    said = in_words_of_the_language(section, masked.text, reader.names.every)
    farther = said != masked.text and words_left(section, masked.text) < words_left(section, said)
    read = attrs.evolve(line, text=masked.text if farther else said)  # "one side rests" is no "1 side"
    ways = tuple(otherwise(section, read.text, reader.names.every))

    def known(other: str) -> bool:
        return any(reader.knows_all(other, each) for each in sentences_of(reader, other, line, values)[0])

    found = slip(section, read, values, reader.file, seek, ways, line.text, known)
    mistakes: tuple[Finding, ...] = (found.finding,)
    if seek and found.lost and found.finding.code == "L-sentence" and not values:
        stop = found.finding.place.column - line.span(reader.file).column
        mistakes += tuple(later_mistake(section, read.text, stop, line.span(reader.file), (*ways, masked.text)))
    if read.text != line.text or names:
        mistakes = tuple(_with_names(each, line, read.text, names, reader.file) for each in mistakes)
    rule = section in OF_RULES and not values  # of what a line declares the rest may be what matters
    kept = reader.names.in_full(_right(section, read.text, stop_of(section, read.text).start)) if rule else ""
    likely = found.meant or (Filled(kept, {}) if kept else None)  # what is wrong with the rest hides no other mistake
    meant = (reader.meant(section, line, likely, names),) if likely else ()
    unknown = reader.unknown(section, meant[0]) if meant else []
    if likely and not all(reader.may_mean(each) and not _guessed(each, likely.text, read.text) for each in unknown):
        return (), mistakes, lost_by(section, line, mistakes[0])  # one answer for a line, not one more for a wild guess
    return meant, mistakes, lost_by(section, line, mistakes[0]) if found.lost else None


def _guessed(name: str, meant: str, written: str) -> bool:
    """Whether a name of a guessed line ends only where something was changed: "foam ball ot" before an "at" put in."""
    old, new = (_WORDS.findall(text.lower()) for text in (written, meant))
    matches = SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
    kept = {at for block in matches for at in range(block.b, block.b + block.size)}
    words = name.split()
    starts = (at for at in range(len(new)) if new[at : at + len(words)] == words)
    beside = (each for at in starts for each in (at - 1, at + len(words)) if 0 <= each < len(new))
    return any(each not in kept for each in beside)


def _right(section: str, text: str, stop: int) -> str:
    """What of a line that stops at a letter can be read: its beginning, or what is to follow in a part of the round."""
    if section == "when" and _IN_A_PART.fullmatch(text[:stop]) and text[stop:].startswith(":"):
        moment = f"{_A_MOMENT.ljust(stop)}{text[stop:]}"  # each word stays in its column
        return moment if is_sentence(section, moment) else ""
    return right_so_far(section, text, stop)


def lost_by(section: str, line: TextLine, mistake: Finding) -> LostLine:
    """The line as one that could not be read, with the sections to which it may belong."""
    return LostLine(frozenset((section, *(each.section for each in mistake.corrections if each.section))), line.text)


def _with_names(finding: Finding, line: TextLine, read: str, names: Sequence[str], file: str) -> Finding:
    """A mistake of a line as it was read, told with its own names, where it stands in the line as written."""
    whole = line.span(file)

    def named(value: Value) -> Value:
        return rewritten(value, lambda text: unmasked(text, names))

    better = tuple(
        attrs.evolve(each, line=unmasked(each.line, names, quoted=True), title=named(each.title), mark=whole)
        for each in finding.corrections
    )
    place = _place_of(unmasked(read[finding.place.column - whole.column :], names), line, whole)
    title, hint = map(named, finding.said or (finding.title, finding.hint))
    return retold(finding, title, hint, place=place, corrections=better)


def _place_of(tail: str, line: TextLine, whole: Span) -> Span:
    """Where the tail of a line as read begins in the line as written, which may have other words for the same."""
    for put_aside in range(_MOST_OTHER_WORDS):
        rest = " ".join(tail.split()[put_aside:])
        if rest and line.text.lower().endswith(rest.lower()):
            before = line.text[: len(line.text) - len(rest)].split()
            first = len(" ".join(before[: len(before) - put_aside])) + (len(before) > put_aside)
            word = line.text[first:].split(maxsplit=1)[0]
            return Span(whole.file, whole.line, whole.column + first, whole.column + first + len(word))
    return whole
