"""The language by what a teacher wants: the rows of LANGUAGE.md under wishes.

`wishes.txt` has a line for each wish: the wish, the words in which teachers put it, and a pattern of the examples that
fulfil it. A new row of the page is under its wish as soon as the pattern finds it.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from math import fsum, log
from pathlib import Path

from grammar.frozen import evolve, frozen
from grammar.mistakes.examples import OF_CLASSES, Example, examples
from grammar.said import Said, listed, quoting, said

LIST = Path(__file__).with_name("wishes.txt")
GAMES = ("space", "sides", "kit", "set-up", "play", "when", "finish", "care")
_MORE_THAN_OTHERS = 0.4
NOTHING_NEAR = "The language has nothing near it."
_NEVER = "never said, but: "
_LEAST = 1.2
_MOST_WITH_WORDS = 6
_WORD = re.compile(r"[a-z]+(?:-[a-z]+)*")
_SMALL = frozenset(_WORD.findall(
    "a an the of in on at to and or is are it its that this with for from by may must can be been has have had when if "
    "who whoever there their they he she his her as so then player players child children pupil ball side team you not "
    "only one two three four five six seven eight nine ten do does did will would should than but all each every"
))  # fmt: skip


@frozen
class Row:
    """A row of the page, with the section in which its sentence stands."""

    section: str
    says: str
    example: str


def row_told(row: Row | Example, section: str = "") -> Said:
    """A row with what it says, and with its section where that is not the one of which is spoken."""
    told = "`{example}` ({says})"
    if section and isinstance(row, Row) and row.section != section:
        return quoting(
            "`{example}` ({says}, under `{section}`)", example=row.example, says=said(row.says), section=row.section
        )
    return quoting(told, example=row.example, says=said(row.says))


def near_rows(rows: Iterable[Row | Example], section: str = "") -> Said:
    """The rows as what comes nearest to a line of a section."""
    return quoting("Nearest to it: {rows}.", rows=listed((row_told(row, section) for row in rows), "or"))


@frozen
class Wish:
    """What a teacher wants, the stems of the words for it, and the rows that say it; where none does, those that say
    what comes near it."""

    wish: str
    stems: frozenset[str]
    rows: tuple[Row, ...]
    near: tuple[Row, ...] = ()


@cache
def rows() -> tuple[Row, ...]:
    """Every row of the page about games."""
    return _rows_of(GAMES)


@cache
def _rows_of(sections: tuple[str, ...]) -> tuple[Row, ...]:
    of: Mapping[str, tuple[Example, ...]] = examples()
    return tuple(Row(section, each.says, each.example) for section in sections for each in of.get(section, ()))


@cache
def wishes() -> tuple[Wish, ...]:
    """Every wish, in the order of the list."""
    found = []
    for line in LIST.read_text(encoding="utf-8").splitlines():
        wish, words, pattern = (part.strip() for part in line.split(" | "))
        near, never = pattern.removeprefix(_NEVER), pattern.startswith("never said")
        of = frozenset((*stems(words), *(() if never else stems(wish))))
        under = tuple(row for row in rows() if re.search(near, row.example))
        found.append(Wish(wish, of, under) if near == pattern else Wish(wish, of, (), under))
    return tuple(found)


def stems(text: str) -> Iterator[str]:
    """The words of a text that tell something, without their endings."""
    for word in _WORD.findall(text.lower()):
        if word not in _SMALL:
            yield _stem(word)


def _stem(word: str) -> str:
    word = {"min": "minute", "s": "second", "m": "metre"}.get(word, word)
    for ending in ("ing", "ers", "er", "ed", "es", "s"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word.removesuffix(ending).rstrip("e")
    return word.rstrip("e")


@cache
def _weights() -> Mapping[str, float]:
    """How much a stem tells: the fewer wishes it stands for, the more."""
    counts = Counter(stem for wish in wishes() for stem in wish.stems)
    return {stem: log(len(wishes()) / count) for stem, count in counts.items()}


def _worth(said: frozenset[str], wish: Wish) -> float:
    """How much of what is said belongs to a wish; the sum is exact, for stems come in any order."""
    return fsum(_weights()[stem] for stem in said & wish.stems)


def wished(line: str) -> Mapping[Row, float]:
    """How much of what a line says belongs to a wish that a row fulfils."""
    said, found = frozenset(stems(line)), dict[Row, float]()
    for wish in wishes():
        worth = _worth(said, wish)
        found |= {row: max(worth, found.get(row, 0.0)) for row in wish.rows if worth}
    return found


def unfulfilled(line: str) -> Wish | None:
    """The wish of a line that no row of the page fulfils, where it is clearly that one: no single word tells so."""
    said = frozenset(stems(line))
    worth = {wish.wish: _worth(said, wish) for wish in wishes()}
    best = max(wishes(), key=lambda wish: worth[wish.wish])
    others = max((worth[wish.wish] for wish in wishes() if wish.rows), default=0.0)
    clear = len(said & best.stems) > 1 and worth[best.wish] >= max(_LEAST, others + _MORE_THAN_OTHERS)
    return best if clear and not best.rows else None


def wishes_for(wanted: str, most: int = 3) -> tuple[Wish, ...]:
    """The wishes that come nearest to some words, the nearest first; all of them for no words."""
    said = frozenset(stems(wanted))
    if not wanted.strip():
        return wishes()
    worth = {wish: _worth(said, wish) for wish in wishes()}
    for wish in [wish for wish in worth if worth[wish]]:
        worth[wish] = max((_of_both(said, wish, row) for row in wish.rows or wish.near), default=worth[wish])
    best = max(worth.values())
    near = sorted((wish for wish in wishes() if worth[wish] > best / 2), key=lambda wish: -worth[wish])
    first = (evolve(wish, rows=tuple(sorted(wish.rows, key=lambda row: -_held(said, row)))) for wish in near)
    return (*_with_the_words(wanted), *first)[:most]


@cache
def _rarity() -> Mapping[str, float]:
    """How much a stem tells of a row: the fewer rows hold it, the more."""
    counts = Counter(stem for row in rows() for stem in _stems_of(row))
    return {stem: log(len(rows()) / count) for stem, count in counts.items()}


@cache
def _stems_of(row: Row) -> frozenset[str]:
    return frozenset(stems(f"{row.example} {row.says}"))


def _of_both(said: frozenset[str], wish: Wish, row: Row) -> float:
    """How much of what is said belongs to a wish or stands in a row of it; what does both counts once."""
    belongs = {stem: _weights()[stem] for stem in said & wish.stems}
    stands = {stem: _rarity()[stem] for stem in said & _stems_of(row)}
    return fsum(max(belongs.get(stem, 0.0), stands.get(stem, 0.0)) for stem in {*belongs, *stands})


def _held(said: frozenset[str], row: Row) -> float:
    """How much of what is said stands in a row itself."""
    return fsum(_rarity()[stem] for stem in said & _stems_of(row))


def _with_the_words(wanted: str) -> tuple[Wish, ...]:
    """What holds several words just as they were typed, which may be none that tell anything: "side by side"; and what
    a class or a hall says with any of them, of which there are no wishes."""
    words = " ".join(_WORD.findall(wanted.lower()))
    typed = re.compile(rf"(?<![\w-]){words}(?![\w-])")
    found = tuple(row for row in rows() if " " in words and typed.search(row.example))
    found += tuple(row for row in _rows_of(OF_CLASSES) if words and typed.search(row.example))
    return (Wish(f'to say "{words}"', frozenset(), found[:_MOST_WITH_WORDS]),) if found else ()


def page_by_wishes() -> str:
    """The second form of the page: what a teacher wants, and the sentences for it, each with its section."""
    lines = ["What you want, and how the language says it", ""]
    told: set[Row] = set()
    for wish in wishes():
        if wish.rows:
            lines += [f"{wish.wish}:", *_told(wish.rows), ""]
            told |= set(wish.rows)
    rest = [row for row in rows() if row not in told]
    if rest:
        lines += ["what else it says:", *_told(rest), ""]
    return "\n".join(lines)


def _told(found: Iterable[Row]) -> Iterator[str]:
    for row in found:
        yield f"  {row.example}"
        yield f"      ({row.section}: {row.says})"
