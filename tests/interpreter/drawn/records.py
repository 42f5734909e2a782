"""What a drawn game means, in plain records: written before any sentence of it, and read by no parser."""

from __future__ import annotations

from random import Random

from attrs import define, field, frozen

PLAIN = ""
NOBODY = ""
SECTIONS = ("head", "space", "sides", "kit", "set-up", "play", "when", "finish")


@frozen
class Crew:
    """Players of a side with a task of their own (PLAIN: without one)."""

    side: str
    role: str


@frozen
class Offer:
    """What one crew may try: with which skill and ball ("" for none), at whose things of which kind.

    `aim` is "target", "player", "ring", "line", "mate" or "way"; `kind` is a kind of thing, a role or a line.
    """

    crew: Crew
    skill: str
    ball: str
    aim: str
    kind: str
    owner: str


@frozen
class Things:
    """So many things of a kind for each of some owners (NOBODY: for all together)."""

    kind: str
    kinds: str
    owners: tuple[str, ...]
    number: int


@frozen
class Fate:
    """What becomes of a thing that is knocked: "down", "up" (again) or "taken" over; "" where nothing is said."""

    what: str


@define
class Draft:
    """A game in the making: its records, and the sentences that say them."""

    dice: Random
    sides: tuple[str, ...] = ()
    by_players: bool = False
    players: int = 2
    cut: str = "halved across"
    role: str = PLAIN
    role_sides: tuple[str, ...] = ()
    role_has_own_task: bool = False
    role_is_spared: bool = False
    role_ball: str = ""
    balls: dict[str, int] = field(factory=dict)
    targets: list[Things] = field(factory=list)
    ring: Things | None = None
    track: str = ""
    queue: str = ""
    queue_is_shared: bool = False
    bench: str = ""
    shut: str = ""
    logs: bool = False
    strip: str = ""
    offers: set[Offer] = field(factory=set)
    fates: dict[tuple[str, str], Fate] = field(factory=dict)
    hit: dict[Crew, str] = field(factory=dict)
    guarded: set[str] = field(factory=set)
    fixed: set[str] = field(factory=set)
    begin: set[tuple[str, str]] = field(factory=set)
    lies: set[str] = field(factory=set)
    may_score: set[str] = field(factory=set)
    may_win: set[str] = field(factory=set)
    may_stop_playing: set[str] = field(factory=set)
    may_change_sides: bool = False
    starts_again: bool = False
    later: set[Offer] = field(factory=set)
    waits: dict[Crew, int] = field(factory=dict)
    waits_at: str = ""
    points_wanted: bool = False
    caught: bool = False
    lines: dict[str, list[str]] = field(factory=lambda: {name: [] for name in SECTIONS})

    @property
    def solo(self) -> bool:
        return len(self.sides) == 1

    @property
    def halved(self) -> bool:
        return self.cut in ("halved across", "in equal parts")

    def say(self, section: str, line: str) -> None:
        self.lines[section].append(line)

    def one_of(self, *choices: str) -> str:
        return self.dice.choice(choices)

    def in_one_of(self, number: int) -> bool:
        return self.dice.randrange(number) == 0

    def others(self, side: str) -> tuple[str, ...]:
        return self.sides if self.solo else tuple(each for each in self.sides if each != side)

    def of_all(self, kind: str) -> bool:
        """Whether every side has things of a kind, or all share them: else nobody can ask each side for them."""
        owners = {owner for each in self.targets if each.kind == kind for owner in each.owners}
        return NOBODY in owners or owners == set(self.sides)

    @property
    def catcher_unclear(self) -> bool:
        """Whether several sides could catch what is aimed at one's own: no sheet says which of them does."""
        return len(self.sides) > 2 and any(offer.owner == offer.crew.side for offer in self.offers)

    def crews(self) -> list[Crew]:
        """All crews there are at the start."""
        return [
            Crew(side, role)
            for side in self.sides
            for role in (PLAIN, *((self.role,) if side in self.role_sides else ()))
        ]

    def text(self) -> str:
        """The sheet, its sections in the order of the language page."""
        parts = ["game Drawn"]
        for name in SECTIONS:
            if self.lines[name]:
                parts.extend([name] if name != "head" else [])
                parts.extend(f"  {line}" for line in self.lines[name])
        return "\n".join(parts) + "\n"
