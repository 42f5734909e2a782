"""A writer that is killed again and again, and what must hold afterwards: nothing acknowledged is lost, what
belongs together is there as a whole or not at all, and the index says what the plain files say."""

from __future__ import annotations

import os
import random
import signal
import time
import traceback
from collections.abc import Callable
from functools import cache
from pathlib import Path

from attrs import define, field
from shared_games import FELL_GATE, game_item, pack_of
from shelves import given, index_is_true, opened

from compose.share.pack.item import Item
from compose.share.pack.pack import Pack, read_pack
from compose.share.pack.taking_in import take_in
from compose.share.shelf.files import Note
from compose.share.shelf.rounds import ObservedRound
from compose.share.shelf.shelf import Shelf

DAY = "2025-11-25"
PACKED = 3
READY = b"open"
AHEAD = 12


@define
class Counts:
    """What a run saw."""

    kills: int = 0
    acknowledged: int = 0
    in_flight_there: int = 0
    in_flight_not_there: int = 0
    acknowledged_of: dict[str, int] = field(factory=dict)


@cache
def numbered(number: int, part: str = "") -> Item:
    """A game of its own name."""
    return game_item(FELL_GATE.replace("game Fell Gate", f"game Gate {number}{part}"))


@cache
def pack_number(number: int) -> Pack:
    """A pack of three games of their own names, read already."""
    return given(read_pack(pack_of(*(numbered(number, part) for part in "abc")), "p"))


def _observe(shelf: Shelf, number: int) -> None:
    seen = ObservedRound(DAY, "5a", 20, float(number + 1), "ewes", 0, "0" * 64)
    given(shelf.observe("Fell Gate", seen))


def _put(shelf: Shelf, number: int) -> None:
    given(shelf.put(numbered(number)))


def _take(shelf: Shelf, number: int) -> None:
    given(take_in(shelf, pack_number(number), {}, None, DAY))


def _note(shelf: Shelf, number: int) -> None:
    given(shelf.note("Fell Gate", Note(DAY, f"note {number}")))


WORK: tuple[tuple[str, Callable[[Shelf, int], None]], ...] = (
    ("round", _observe),
    ("game", _put),
    ("pack", _take),
    ("note", _note),
)


def write_until_killed(folder: Path, first: int, acknowledge: int) -> None:
    """Work on the shelf; the number of each piece of work is told when it is done."""
    with opened(folder) as shelf:
        os.write(acknowledge, READY)
        number = first
        while True:
            WORK[number % len(WORK)][1](shelf, number)
            os.write(acknowledge, number.to_bytes(4, "big"))
            number += 1


def killed_once(folder: Path, first: int, after: int, then_s: float) -> list[int]:
    """Start a writer, kill it a moment after it has acknowledged so much work, and give what it acknowledged."""
    for number in range(first, first + AHEAD):
        pack_number(number)
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            write_until_killed(folder, first, writing)
        except BaseException:
            traceback.print_exc()
            os._exit(1)
    os.close(writing)
    told = b""
    while len(told) < len(READY) + 4 * after:
        more = os.read(reading, 4096)
        assert more, "the writer ended by itself"
        told += more
    time.sleep(then_s)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    while more := os.read(reading, 4096):
        told += more
    os.close(reading)
    told = told.removeprefix(READY)
    return [int.from_bytes(told[at : at + 4], "big") for at in range(0, len(told) - 3, 4)]


def run(folder: Path, kills: int, seed: int, longest_s: float = 0.05) -> Counts:
    """Kill a writer so many times; AssertionError where something acknowledged is not there."""
    chance = random.Random(seed)
    counts = Counts()
    with opened(folder) as shelf:
        given(shelf.put(game_item()))
    done: set[int] = set()
    following = 0
    for kill in range(kills):
        told = killed_once(folder, following, chance.randrange(4), chance.uniform(0.0, longest_s))
        done.update(told)
        in_flight = following + len(told)
        following = in_flight + 1
        if _holds(folder, done, in_flight, whole=kill % 20 == 0 or kill == kills - 1):
            counts.in_flight_there += 1
            done.add(in_flight)
        else:
            counts.in_flight_not_there += 1
        counts.kills += 1
        counts.acknowledged += len(told)
        for number in told:
            what = WORK[number % len(WORK)][0]
            counts.acknowledged_of[what] = counts.acknowledged_of.get(what, 0) + 1
    return counts


def _holds(folder: Path, done: set[int], in_flight: int, whole: bool) -> bool:
    """Check a shelf after a kill; whether the work that was never acknowledged is there all the same."""
    with opened(folder) as shelf:
        there = _numbers(shelf)
        assert done <= there <= done | {in_flight}, (done - there, there - done, in_flight)
        if whole:
            assert index_is_true(shelf)
            assert len(given(shelf.stored())) == shelf.index.execute("SELECT count(*) FROM items").fetchone()[0]
            given(shelf.rebuild())
            assert not list(folder.glob("*/.writing-*")) and not list(folder.glob("journal/.gone-*"))
        assert not list(folder.glob("journal/*.open"))
    return in_flight in there


def _numbers(shelf: Shelf) -> set[int]:
    """The numbers of all pieces of work that the shelf holds; a pack counts when it is there as a whole."""
    found = [int(seen.length_s) - 1 for seen in given(shelf.rounds("Fell Gate"))]
    found += [int(note.text.split()[1]) for note in given(shelf.named("Fell Gate")).notes]
    names = [name.split()[1] for (name,) in shelf.index.execute("SELECT name FROM items WHERE name LIKE 'Gate %'")]
    found += [int(name) for name in names if name.isdigit()]
    packed = [int(name[:-1]) for name in names if not name.isdigit()]
    assert all(packed.count(number) == PACKED for number in packed), "a pack was taken in by half"
    assert len(found) == len(set(found)), "a piece of work is there twice"
    return set(found) | set(packed)
