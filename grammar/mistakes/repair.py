"""The fewest small changes that make a line a sentence: a word respelled, put in, left out or moved.

The search goes along the parsing table. Where the line cannot go on, every small change there, or at one
of the few pieces before, is tried; the cheapest ways that get farther are followed.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator
from difflib import SequenceMatcher
from functools import lru_cache

from grammar.automaton import END, STRANGE, Piece, Stack, after, beginning, phrases_of, possible
from grammar.frozen import frozen
from grammar.mistakes.small_words import SMALL_WORDS, likeness_of_slip
from grammar.words import can_be_alike

MOST_CHANGES = 3
MOST_COST = 1.7
HARDLY_DEARER = 0.4
WIDTH = 6
LOOK_BACK = 4
MOST_WORDS = 4
_LIKE_ENOUGH = 0.7
_LIKE_ENOUGH_WITH_ANOTHER_BEGINNING = 0.82
_SIGNS = frozenset(("COLON", "COMMA"))
_NEVER_IN_NAMES = frozenset(("it", "its", "their", "that", "and", "or"))  # with one it would not be known for a name
_MAY_BE_MISSING = (
    "the", "is", "in", "to", "of", "by", "at", "with", "has", "and", "when", "from", "like", "for", "wins", "ages",
    "side", "deep", "else", "a draw", "succeed", "away", "of the attempts", "stay", "usually", "as",
)  # fmt: skip


@frozen
class Change:
    """`old` in the line, from letter `start` to `end`, becomes `new`; one of the two may be "".

    `doubled`: it only stood twice. `of_the_language`: it is a word that a name beside it cannot have.
    """

    old: str
    new: str
    start: int
    end: int
    doubled: bool = False
    of_the_language: bool = False


@frozen
class Repair:
    """A row of pieces that is a sentence, with what was changed and how far that is from the line."""

    pieces: tuple[Piece, ...]
    changes: tuple[Change, ...]
    cost: float


@frozen
class _Way:
    """A line mended up to piece `at`: what stands before it, and the parser's stack there."""

    done: tuple[Piece, ...]
    changes: tuple[Change, ...]
    cost: float
    stack: Stack
    at: int


def repairs(section: str, line: list[Piece], most_cost: float = MOST_COST) -> list[Repair]:
    """The repairs that cost at most `most_cost`, the cheapest first: the best, and those hardly dearer."""
    ways = [_Way((), (), 0.0, beginning(section), 0)]
    found: list[Repair] = []
    for _ in range(MOST_CHANGES + 1):
        following: list[_Way] = []
        for way in ways:
            trail = list(_gone_on(section, line, way))
            last = trail[-1]
            if last.at == len(line) and after(section, last.stack, END):
                found.append(Repair(last.done, last.changes, round(last.cost, 6)))
            elif len(way.changes) < MOST_CHANGES:
                following += _changed(section, line, trail)
        limit = min([most_cost, *(repair.cost + HARDLY_DEARER for repair in found)])
        ways = heapq.nsmallest(WIDTH, (way for way in following if way.cost <= limit), _promise)
    return sorted(found, key=lambda repair: repair.cost)


def _promise(way: _Way) -> tuple[float, int, list[str]]:
    """The smaller the better: cheap and far; the words decide where that is equal."""
    return round(way.cost - 0.08 * way.at, 6), way.at, [change.new for change in way.changes]


def _gone_on(section: str, line: list[Piece], way: _Way) -> Iterator[_Way]:
    """The way and all that it leads to without a change."""
    yield way
    for index in range(way.at, len(line)):
        stack = after(section, way.stack, line[index].kind)
        if stack is None:
            return
        way = _Way((*way.done, line[index]), way.changes, way.cost, stack, index + 1)
        yield way


def _changed(section: str, line: list[Piece], trail: list[_Way]) -> Iterator[_Way]:
    """Ways with one change more that get past the place where the line stopped."""
    stopped = trail[-1].at
    for way in trail[-1 - LOOK_BACK :]:
        back = 0.06 * (stopped - way.at)
        for cost, put, taken in _edits(section, line, way):
            stack: Stack | None = way.stack
            for piece in put:
                stack = after(section, stack, piece.kind) if stack else None
            if stack is None:
                continue
            at = way.at + taken
            if at < len(line) and after(section, stack, line[at].kind) is None and not (put and at > stopped):
                continue
            change = _change(line, way.at, put, taken)
            yield _Way((*way.done, *put), (*way.changes, change), way.cost + cost + back, stack, at)


def _change(line: list[Piece], at: int, put: list[Piece], taken: int) -> Change:
    gone = line[at : at + taken]
    start = gone[0].start if gone else (line[at].start if at < len(line) else (line[-1].end if line else 0))
    end = gone[-1].end if gone else start
    doubled = len(gone) == 1 and not put and _doubled(line, at)
    reserved = len(gone) == 1 and not put and not doubled and _inside_a_name(line, at)
    return Change(" ".join(p.text for p in gone), " ".join(p.text for p in put), start, end, doubled, reserved)


def _inside_a_name(line: list[Piece], at: int) -> bool:
    """Whether a word of the language stands beside words of a name."""
    if line[at].kind in ("WORD", "DET", STRANGE) or line[at].kind in _SIGNS or not line[at].text[0].isalpha():
        return False
    if line[at].text.lower() in _NEVER_IN_NAMES:
        return False
    return any(0 <= near < len(line) and line[near].kind == "WORD" for near in (at - 1, at + 1))


def _doubled(line: list[Piece], at: int) -> bool:
    return any(0 <= near < len(line) and line[near].text.lower() == line[at].text.lower() for near in (at - 1, at + 1))


def _edits(section: str, line: list[Piece], way: _Way) -> Iterator[tuple[float, list[Piece], int]]:
    """(cost, pieces put in, how many of the line go) for each small change at one place."""
    at, here = way.at, line[way.at] if way.at < len(line) else None
    kinds = possible(section, way.stack)
    if here:
        yield _cost_of_leaving_out(line, at), [], 1
    place = here.start if here else (line[-1].end if line else 0)
    for kind in kinds:
        phrases = phrases_of(kind)
        for phrase in phrases:
            for taken in range(1, min(MOST_WORDS, len(line) - at) + 1):
                said = " ".join(piece.text.lower() for piece in line[at : at + taken])
                cost = _cost_of_respelling(said, phrase, all(p.kind != "WORD" for p in line[at : at + taken]))
                if cost:
                    yield cost, [Piece(kind, phrase, place, line[at + taken - 1].end)], taken
        for phrase, cost in _puttable(kind, phrases):
            yield cost, [Piece(kind, phrase, place, place)], 0
    if at + 1 < len(line) and not _makes_a_name(line, at):
        yield 0.6, [line[at + 1], line[at]], 2


def _makes_a_name(line: list[Piece], at: int) -> bool:
    """Whether a word moved behind the next would be part of a name that follows: "5 made
    passes" was not meant by "made 5 passes"."""
    return line[at].kind == "WORD" and at + 2 < len(line) and line[at + 2].kind == "WORD"


def _cost_of_leaving_out(line: list[Piece], at: int) -> float:
    piece = line[at]
    if _doubled(line, at):
        return 0.2
    if piece.kind == STRANGE:
        return 0.4
    return 0.6 if piece.kind in _SIGNS or piece.kind == "DET" else 1.2


def _cost_of_respelling(said: str, phrase: str, reserved: bool) -> float:
    """What it costs to write a phrase for other words; 0 where that is too far. Words that the language
    knows were probably meant, so they cost more."""
    if said in SMALL_WORDS and phrase in SMALL_WORDS and said != phrase:
        return 0.55 if said == "," else 0.8
    likeness = _likeness(said, phrase)
    if not likeness:
        return 0.0
    return 0.1 + 2 * (1 - likeness) + (0.4 if reserved and said not in phrase else 0.0)


def _puttable(kind: str, phrases: tuple[str, ...]) -> Iterator[tuple[str, float]]:
    """Words that may have been forgotten, each with what it costs to put it in."""
    if kind in _SIGNS:
        yield phrases[0], 0.45
    for phrase in phrases:
        if phrase in _MAY_BE_MISSING:
            yield phrase, 0.7


@lru_cache(maxsize=20_000)
def _likeness(said: str, phrase: str) -> float:
    """How like two spellings are, from 0 to 1; 0 where they are not like enough, or the same."""
    longer = max(len(said), len(phrase))
    if said == phrase or len(said) < 2 or abs(len(said) - len(phrase)) > max(2, longer // 4):
        return 0.0
    if not can_be_alike(said, phrase, _LIKE_ENOUGH):
        return likeness_of_slip(said, phrase)
    ratio = SequenceMatcher(None, said, phrase).ratio()
    if _turned_round(said, phrase):
        ratio = max(ratio, 0.85)
    if small := likeness_of_slip(said, phrase):
        return small
    enough = _LIKE_ENOUGH if said[0] == phrase[0] else _LIKE_ENOUGH_WITH_ANOTHER_BEGINNING
    return ratio if ratio >= enough else 0.0


def _turned_round(said: str, phrase: str) -> bool:
    """Whether two neighbouring letters changed places: "hsa" for "has"."""
    if len(said) != len(phrase) or len(said) < 3:
        return False
    differ = [index for index, (one, other) in enumerate(zip(said, phrase, strict=True)) if one != other]
    return len(differ) == 2 and differ[1] == differ[0] + 1 and sorted(said) == sorted(phrase)
