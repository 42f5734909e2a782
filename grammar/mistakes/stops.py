"""Where a line stops to be a sentence, and where one of its later parts does."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache

import attrs

from grammar.automaton import END, Piece, Stack, after, beginning, phrases_of, pieces, possible, reach
from grammar.frozen import frozen
from grammar.mistakes.examples import examples

_NEVER_NAMES = ("into", "onto", "by", "until", "unless", "without", "hits", "who", "which", "because", "toward")
_ANY_WORD = re.compile(r"\s*([\w'-]+|.|$)")
MOST_SAID = 5
_PARTS = re.compile(r"[,:] | and ")
_PARTED = ("space", "play", "when", "finish")


@frozen
class Stop:
    """Where a line stops to be a sentence: from letter `start` (from 0) on, with what stands there.

    `expected` has the rest of a phrase of the language that was begun, where one was; else the stack tells.
    """

    start: int
    text: str
    stack: Stack
    expected: tuple[str, ...] = ()


@lru_cache(maxsize=1_024)
def stop_of(section: str, text: str) -> Stop:
    """The farthest place to which a line goes as a sentence, or as the beginning of one of its phrases."""
    row = pieces(text)
    count, last = reach(section, row)
    if 0 < count < len(row) and row[count - 1].text.lower() in _NEVER_NAMES:
        count, last = reach(section, row[: count - 1])
    piece = row[count] if count < len(row) else Piece(END, "", len(text), len(text))
    best = Stop(piece.start, piece.text, last)
    stack: Stack | None = beginning(section)
    for index, begun in enumerate([*row[: count + 1], piece][: count + 1]):
        if stack is None:
            break
        for phrase in _phrases_of_several_words(section, stack):
            best = _farther(best, text, begun.start, phrase, stack)
        stack = after(section, stack, row[index].kind) if index < len(row) else None
    return best


@lru_cache(maxsize=1_024)
def _phrases_of_several_words(section: str, stack: Stack) -> tuple[str, ...]:
    """The phrases that may follow and of which a line may hold a part."""
    return tuple(phrase for kind in possible(section, stack) for phrase in phrases_of(kind) if " " in phrase)


@cache
def _pattern_of(word: str) -> re.Pattern[str]:
    return re.compile(rf"\s*{re.escape(word)}(?![\w'-])", re.IGNORECASE)


def _farther(best: Stop, text: str, start: int, phrase: str, stack: Stack) -> Stop:
    """The stop within a phrase that a line begins at a letter, where that is farther along."""
    words, at, known = phrase.split(), start, 0
    for word in words:
        match = _pattern_of(word).match(text, at)
        if match is None:
            break
        at, known = match.end(), known + 1
    found = _ANY_WORD.match(text, at)
    if found is None or not 0 < known < len(words):
        return best
    rest = f"`{' '.join(words[known:])}`"
    if found.start(1) == best.start and best.expected:
        return Stop(best.start, best.text, stack, tuple(dict.fromkeys((*best.expected, rest)))[:MOST_SAID])
    return Stop(found.start(1), found.group(1), stack, (rest,)) if found.start(1) > best.start else best


def later_stop(section: str, text: str, stop: int, ways: Sequence[str]) -> Stop | None:
    """Where the rest of a line stops, which has stopped at letter `stop` before it.

    None where that rest can stand behind some beginning of a sentence, as it is or as one of the `ways` to say the line
    ends, and where its first word says nothing that is known.
    """
    cuts = list(_PARTS.finditer(text, stop)) if section in _PARTED else []
    if not cuts:
        return None
    rest, best = text[cuts[0].end() :], Stop(0, "", beginning(section))
    if cuts[0].group() == ", " and any(each.kind in ("WORD", "DET") for each in pieces(rest)[:1]):
        return None  # one more of a list, of which nobody knows what is said of it
    for said in dict.fromkeys((rest, *(_last_parts(way, len(cuts)) for way in ways))):
        for before in _beginnings(section, cuts[0].group()):
            found = stop_of(section, before + said)
            if not found.text and END in possible(section, found.stack):
                return None
            if said == rest and found.start - len(before) > best.start:
                best = attrs.evolve(found, start=found.start - len(before))
    return attrs.evolve(best, start=cuts[0].end() + best.start) if best.text else None


def _last_parts(text: str, number: int) -> str:
    cuts = list(_PARTS.finditer(text))
    return text[cuts[-number].end() :] if len(cuts) >= number else text


@cache
def _beginnings(section: str, sign: str) -> tuple[str, ...]:
    """What stands before a sign in the examples of a section, once for each state in which the sentence is then."""
    found: dict[Stack, str] = {}
    for each in examples().get(section, ()):
        for cut in _PARTS.finditer(each.example):
            if cut.group() == sign:
                row = pieces(each.example[: cut.end()])
                count, stack = reach(section, row)
                if count == len(row):
                    found.setdefault(stack, each.example[: cut.end()])
    return tuple(found.values())


def words_left(section: str, text: str) -> int:
    """How many words of a line stand behind the place where it stops to be a sentence."""
    return len(text[stop_of(section, text).start :].split())
