"""Finding on a shelf: by skill, age, kit, space, players and words; the nearest where nothing fits."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterable, Iterator

import attrs

from compose.share.refusal import RefusedError, shown
from compose.share.shelf.shelf import Shelf
from compose.share.told import outcome_of
from grammar.finding import Outcome
from grammar.frozen import frozen
from grammar.words import listing, nearest, plural

MOST_NEAREST = 5
_MOST_WORDS = 12


@frozen
class Wanted:
    """What a game should be like; what is left out does not count.

    `kit` is what the cupboard has: each thing of a game must be among it, by name, by what it is like, or
    by its category. `space_m` is the length and width of the floor, in any order.
    """

    kind: str = ""
    skill: str = ""
    age: float | None = None
    kit: tuple[str, ...] = ()
    space_m: tuple[float, float] | None = None
    players: int | None = None
    words: str = ""
    sound: bool = False


@frozen
class KitWords:
    """A line of a game's kit: its name, what it is like in the library's kit, and its category."""

    name: str
    like: str
    category: str


@frozen
class Found:
    """A thing of the shelf; `lacks` says in words where it is not what was wanted (nothing where it fits).

    `plays` is the content hash of the game that is played: for a remix, of the game that it makes, or ""
    where it cannot be made here.
    """

    name: str
    kind: str
    about: str
    path: str
    content: str
    plays: str
    ages_years: tuple[float, float] | None
    players: tuple[int, int] | None
    court_m: tuple[float, float] | None
    skills: tuple[str, ...]
    kit: tuple[KitWords, ...]
    licence: str | None
    origin: str
    lineage: str
    rounds: int
    lacks: tuple[str, ...] = ()


@frozen
class Search:
    """What fits, best match of the words first; where nothing does, the nearest. `spelling` mends the words."""

    fitting: tuple[Found, ...]
    nearest: tuple[Found, ...] = ()
    spelling: str = ""


def find(shelf: Shelf, wanted: Wanted) -> Outcome[Search]:
    """The things of a shelf that are as wanted."""
    return outcome_of(shelf.folder, lambda: _find(shelf, wanted))


def _find(shelf: Shelf, wanted: Wanted) -> Search:
    shelf.catch_up()
    ranks = _ranks(shelf.index, wanted.words)
    verdicts = dict(shelf.index.execute("SELECT content, to_mend FROM verdicts WHERE whole"))
    fitting: list[tuple[float, Found]] = []
    others: list[tuple[float, Found]] = []
    for found, number in _everything(shelf.index):
        if wanted.kind and found.kind != wanted.kind:
            continue
        lacks = list(_lacks(found, wanted, verdicts))
        if ranks is not None and number not in ranks:
            lacks.append((1.5, f"does not say {wanted.words}"))
        rank = (ranks or {}).get(number, 0.0)
        if lacks:
            told = tuple(words for _, words in lacks)
            others.append((sum(weight for weight, _ in lacks), attrs.evolve(found, lacks=told)))
        else:
            fitting.append((rank, found))
    fitting.sort(key=lambda pair: (pair[0], pair[1].name.casefold()))
    others.sort(key=lambda pair: (pair[0], pair[1].name.casefold()))
    near = () if fitting else tuple(found for _, found in others[:MOST_NEAREST])
    return Search(tuple(found for _, found in fitting), near, "" if fitting else _spelling(shelf.index, wanted.words))


def _everything(index: sqlite3.Connection) -> Iterator[tuple[Found, int]]:
    tags: dict[int, dict[str, list[str]]] = {}
    for item, sort, word in index.execute("SELECT item, sort, word FROM tags ORDER BY rowid"):
        tags.setdefault(item, {}).setdefault(sort, []).append(word)
    played = dict(index.execute("SELECT content, count(*) FROM rounds GROUP BY content"))
    query = (
        "SELECT id, name, kind, about, path, content, plays, licence, origin, lineage, ages_least, ages_most,"
        " players_least, players_most, long_m, wide_m FROM items ORDER BY kind, slug"
    )
    for number, name, kind, about, path, content, plays, licence, origin, lineage, *numbers in index.execute(query):
        young, old, least, most, long, wide = numbers
        of_item = tags.get(number, {})
        found = Found(
            name,
            kind,
            about,
            path,
            content,
            plays,
            None if young is None else (young, old),
            None if least is None else (least, most),
            None if long is None else (long, wide),
            tuple(of_item.get("skill", ())),
            tuple(KitWords(*line.split("|")) for line in of_item.get("kit", ())),
            licence,
            origin,
            lineage,
            played.get(plays, 0),
        )
        yield found, number


def _lacks(found: Found, wanted: Wanted, verdicts: dict[str, int]) -> Iterator[tuple[float, str]]:
    """Where a thing is not as wanted, and how far off that is: 1 is a whole wish, less is nearer."""
    if wanted.skill and not any(_same(wanted.skill, each) for each in found.skills):
        yield 1.0, f"practises {listing(found.skills) or 'nothing that it names'}"
    if wanted.age is not None:
        yield from _outside(wanted.age, found.ages_years, 6, "is for ages {0:g} to {1:g}")
    if wanted.players is not None:
        yield from _outside(wanted.players, found.players, 15, "is for {0:g} to {1:g} players")
    if wanted.space_m and found.court_m:
        room, needs = sorted(wanted.space_m), sorted(found.court_m)
        short = max(need - have for need, have in zip(needs, room, strict=True))
        if short > 0:
            yield min(1.0, short / 10), f"needs a court of {needs[1]:g} m by {needs[0]:g} m"
    if wanted.kit and found.kind != "modifier":
        missing = _missing(found.kit, wanted.kit)
        if missing:
            yield min(1.0, 0.4 * len(missing)), f"needs {listing(missing)}"
    if wanted.sound and verdicts.get(found.plays) != 0:
        to_mend = verdicts.get(found.plays)
        yield 1.0, "was not checked to its end" if to_mend is None else f"has {to_mend} to mend"


def _outside(value: float, band: tuple[float, float] | None, scale: float, words: str) -> Iterator[tuple[float, str]]:
    if band is None:
        yield 1.0, "does not say for whom it is"
    elif not band[0] <= value <= band[1]:
        yield min(1.0, max(band[0] - value, value - band[1]) / scale), words.format(*band)


def _missing(needs: Iterable[KitWords], cupboard: tuple[str, ...]) -> list[str]:
    """The kit of a game that is not in the cupboard."""
    have = {form for word in cupboard for form in (word.casefold().strip(), _one(word))}
    return [plural(line.name) for line in needs if not have & {line.name, plural(line.name), line.like, line.category}]


def _one(word: str) -> str:
    folded = word.casefold().strip()
    return folded[:-1] if folded.endswith("s") else folded


def _same(one: str, other: str) -> bool:
    return one.casefold().strip() == other.casefold().strip()


def _terms(words: str) -> list[str]:
    return re.findall(r"\w+", words)[:_MOST_WORDS]


def _ranks(index: sqlite3.Connection, words: str) -> dict[int, float] | None:
    """How well each thing says the words (the lower, the better), or None where none were asked for."""
    if not words.strip():
        return None
    terms = _terms(words)
    if not terms:
        raise RefusedError("S-words", f"`{shown(words)}` holds no word to look for.", "Give a word or two.")
    query = " ".join(f'"{term}"*' for term in terms)
    weights = "10.0, 4.0, 4.0, 2.0, 1.0, 1.0"
    found = index.execute(f"SELECT rowid, bm25(words, {weights}) FROM words WHERE words MATCH ?", (query,))
    return dict(found.fetchall())


def _spelling(index: sqlite3.Connection, words: str) -> str:
    """The words with each unknown one spelled as on the shelf, or "" where that is no help."""
    known = [term for (term,) in index.execute("SELECT DISTINCT term FROM known_words")] if words else []
    mended = []
    for term in _terms(words):
        folded = term.casefold()
        begun = any(each.startswith(folded) for each in known)
        near = [] if begun else nearest(folded, known, 1)
        mended.append(near[0] if near else folded)
    said = " ".join(mended)
    return said if said != words.casefold().strip() else ""
