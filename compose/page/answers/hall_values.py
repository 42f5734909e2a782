"""What a hall screen is made of: plain values that cross from a worker to the page, and load nothing heavy."""

from __future__ import annotations

from grammar.frozen import frozen


@frozen
class Counter:
    """What is counted of a side while it plays, and with how many it begins."""

    side: str
    words: str
    start: int


@frozen
class Deciding:
    """What the counts say of who has won. `at_bell`: "more" or "fewer" of them, "" where they do not decide it;
    `level`: what it is then where they are level, "draw" or "nobody", "" where that is not said. Each of the `ends`:
    who wins where the count of a side is at least, at most or just so many."""

    at_bell: str
    level: str
    ends: tuple[tuple[str, str, str, int], ...]


@frozen
class HallGame:
    """What a game needs in the hall. `sides` are names with how they are called; `content` says which game it is;
    `waits` whether anybody can come to wait in it; `groups` how many take turns as its two sides on so many `courts` at
    a time, 0 where there are two for good; `all_meet` whether each meets every other: else the winner stays on, or on
    two courts winners meet winners."""

    slug: str
    uses: tuple[str, ...]
    title: str
    content: str
    sides: tuple[tuple[str, str], ...]
    clock_s: float | None
    rounds: int
    pupils: int
    counters: tuple[Counter, ...]
    deciding: Deciding
    cautions: tuple[str, ...]
    waits: bool
    groups: int
    courts: int
    all_meet: bool
