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
class HallGame:
    """What a game needs in the hall. `sides` are names with how they are called; `content` says which game it is;
    `waits` whether anybody can come to wait in it; `groups` how many take turns as its two sides, 0 where none rest,
    and `all_meet` whether each meets every other: else the winner stays on."""

    slug: str
    uses: tuple[str, ...]
    title: str
    content: str
    sides: tuple[tuple[str, str], ...]
    clock_s: float | None
    rounds: int
    pupils: int
    counters: tuple[Counter, ...]
    cautions: tuple[str, ...]
    waits: bool
    groups: int
    all_meet: bool
