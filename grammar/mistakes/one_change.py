"""Every sentence that is one change away from a line: a phrase in the place of a piece or two, put in, or left out.

Spelling plays no part here (repair.py goes by it). What is usual beside the words around it is nearer: the
pairs of neighbours in the examples of LANGUAGE.md say what is usual.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise

from grammar.automaton import END, Piece, Stack, after, beginning, phrases_of, pieces, possible
from grammar.mistakes.examples import examples
from grammar.mistakes.repair import Change, Repair
from grammar.words import likeness

MOST_FOUND = 6
MOST_TAKEN = 5
_DEAREST, _DEAREST_PUT_IN = 0.95, 0.65
_OTHER, _PUT_IN, _LEFT_OUT, _WORD_OFF, _UNIT = 0.7, 0.6, 0.9, 0.45, 0.35
_UNUSUAL = 0.3  # what a neighbour costs beside which a phrase does not stand in any example
_UNITS = {"LENGTH": ("m", "cm"), "DURATION": ("min", "s"), "PERCENT": ("%",)}
_OPEN = ("NUMBER", "LENGTH", "DURATION", "PERCENT", "STRING", "LICENCE")
_OF_NAMES = ("COURT", "SIDE_LINE", "PARTS", "THING", "SIZE")  # what stands in names is never the word that was meant
_EDGE = ""
_NAME = "~"
_LICENCE = "CC-BY-4.0"
_TURNING = frozenset(("outside", "not", "never", "without", "no", "except", "unless", "until"))  # never put aside


def one_change(section: str, line: Sequence[Piece]) -> list[Repair]:
    """The sentences that are one change away, the likeliest first."""
    found: dict[tuple[str, ...], Repair] = {}
    stack: Stack | None = beginning(section)
    for at in range(len(line) + 1):
        if stack is None:
            break
        for cost, put, taken in _changes(section, stack, line, at):
            following = after(section, stack, put.kind) if put else stack
            if cost <= (_DEAREST if taken else _DEAREST_PUT_IN) and _goes_on(section, following, line, at + taken):
                row = (*line[:at], *((put,) if put else ()), *line[at + taken :])
                said = tuple(piece.text.lower() for piece in row)
                if said not in found or cost < found[said].cost:
                    found[said] = Repair(row, (_change(line, at, put, taken),), round(cost, 6))
        stack = after(section, stack, line[at].kind) if at < len(line) else None
    return sorted(found.values(), key=lambda repair: repair.cost)[:MOST_FOUND]


def _changes(section: str, stack: Stack, line: Sequence[Piece], at: int) -> Iterator[tuple[float, Piece | None, int]]:
    """(cost, piece put in, how many of the line go) for each change at one place."""
    before = _sort(line[at - 1]) if at else _EDGE
    kinds = [kind for kind in possible(section, stack) if kind not in _OF_NAMES]
    for taken in range(min(MOST_TAKEN, len(line) - at) + 1):
        behind = _sort(line[at + taken]) if at + taken < len(line) else _EDGE
        gone = " ".join(piece.text.lower() for piece in line[at : at + taken])
        if not _TURNING.isdisjoint(gone.split()):
            continue
        if taken == 1:
            yield _LEFT_OUT + _strange(section, before, behind), None, 1
        for kind in kinds:
            for text, near in _texts(section, kind, line, at, taken, gone):
                if near:
                    yield near, Piece(kind, text, -2, -2), taken
                elif taken < min(2, len(line)):
                    new = kind if kind in _OPEN else text.lower()
                    strange = _strange(section, before, new) + _strange(section, new, behind)
                    cost = _OTHER + 0.2 * (taken - 1) if taken else _PUT_IN
                    yield cost + strange, Piece(kind, text, -2, -2), taken


def _texts(
    section: str, kind: str, line: Sequence[Piece], at: int, taken: int, gone: str
) -> Iterator[tuple[str, float]]:
    """What a piece of a kind may say here; with a cost of its own where it is near to what stands there."""
    if kind in _UNITS:
        if taken in (1, 2) and line[at].kind == "NUMBER":
            unit = line[at + 1].text if taken == 2 else ""
            for each in _UNITS[kind]:
                yield f"{line[at].text} {each}", _UNIT + (1 - likeness(unit.lower(), each) if unit else 0.2)
    elif kind == "LICENCE":
        yield _LICENCE, _WORD_OFF if likeness(gone, _LICENCE.lower()) > 0.6 else 0.0
    elif kind == "WORD":
        before = _sort(line[at - 1]) if at else _EDGE
        behind = _sort(line[at + taken]) if at + taken < len(line) else _EDGE
        for word in sorted(_words_between(section, before, behind)):
            yield word, 0.0
    else:
        for phrase in phrases_of(kind):
            if phrase != gone:
                yield phrase, _WORD_OFF if _a_word_off(gone.split(), phrase.split()) else 0.0


def _a_word_off(said: Sequence[str], words: Sequence[str]) -> bool:
    """Whether one is the other but for a word: "put kit" or "put onto kit" and "put in kit"."""
    shorter, longer = sorted((said, words), key=len)
    if len(longer) < 2 or not shorter or len(longer) - len(shorter) > 1 or not all(word[0].isalpha() for word in said):
        return False
    return sum(word not in longer for word in shorter) <= (len(longer) == len(shorter))


def _goes_on(section: str, stack: Stack | None, line: Sequence[Piece], at: int) -> bool:
    for piece in line[at:]:
        if stack is None:
            return False
        stack = after(section, stack, piece.kind)
    return stack is not None and after(section, stack, END) is not None


def _change(line: Sequence[Piece], at: int, put: Piece | None, taken: int) -> Change:
    gone = line[at : at + taken]
    start = gone[0].start if gone else line[at].start if at < len(line) else line[-1].end if line else 0
    return Change(
        " ".join(piece.text for piece in gone), put.text if put else "", start, gone[-1].end if gone else start
    )


def _sort(piece: Piece) -> str:
    return piece.kind if piece.kind in _OPEN else piece.text.lower()


def _strange(section: str, one: str, other: str) -> float:
    """What it costs that two pieces never stand side by side in the examples; one name is as good as another."""
    known, phrases = _neighbours(section), _phrases(section)
    alike = (one if one in phrases else _NAME, other if other in phrases else _NAME)
    return 0.0 if (one, other) in known or alike in known else _UNUSUAL


@cache
def _rows(section: str) -> tuple[tuple[Piece, ...], ...]:
    return tuple(tuple(pieces(each.example)) for each in examples().get(section, ()))


@cache
def _neighbours(section: str) -> frozenset[tuple[str, str]]:
    """Which pieces stand side by side in the examples of a section, by their words and by their sorts."""
    said = [[_EDGE, *map(_sort, row), _EDGE] for row in _rows(section)]
    sorts = [
        [_EDGE, *(_NAME if piece.kind == "WORD" else _sort(piece) for piece in row), _EDGE] for row in _rows(section)
    ]
    return frozenset(pair for row in (*said, *sorts) for pair in pairwise(row))


@cache
def _phrases(section: str) -> frozenset[str]:
    """What stands in the examples of a section and is no name."""
    return frozenset((_EDGE, *(_sort(piece) for row in _rows(section) for piece in row if piece.kind != "WORD")))


@cache
def _words_between(section: str, before: str, behind: str) -> frozenset[str]:
    """The words of names that stand in the examples behind one piece and before another."""
    pairs = _neighbours(section)
    known = {piece.text.lower() for row in _rows(section) for piece in row if piece.kind == "WORD"}
    return frozenset(word for word in known if (before, word) in pairs and (word, behind) in pairs)
