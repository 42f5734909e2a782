"""What becomes of a sheet of which one word is exchanged: refused, another game, the same one, or nothing is said."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from functools import cached_property
from typing import Any

import attrs
from attrs import evolve, frozen

import library
from compose.check import Budget, check
from compose.net.from_game import net_of
from compose.net.net import Net, Rule
from compose.staging.floor.throws import throws
from compose.staging.laid_out import laid_out
from compose.staging.teams import teams_of, usual_players
from grammar.core.game import Core
from grammar.core.reading.from_game import core_of
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.parse import parse_line
from grammar.resolve import resolve
from grammar.sentences.base import Node
from grammar.span import Span
from grammar.tree import GameSheet, Line
from tests.grammar.alike import FOR_PEOPLE, may_be_alike, same_in_one_game, same_on_the_floor, spells_out
from tests.grammar.exchanges import Exchange, names_of
from tests.net.played_alike import played_alike

LEAST_PLAYERS = 3
PLAYED = ("set-up", "play", "when", "finish")
CLASSES = (9, 16, 23, 30, 41)  # pupils: classes of different sizes are parted differently
LOOKED_AT = Budget(states=3_000)
TOLD_ONLY = frozenset(
    ["name", "words", "span", "rule", "rules", "title", "told", "plurals", "lines", "text", "following"]
)


class Verdict(Enum):
    """What is said of an exchange."""

    UNREAD = "no sentence"
    REFUSED = "refused"
    DIFFERS = "differs"
    SYNONYM = "synonym"
    GRANTED = "granted anyway"
    PEOPLE = "for people"
    IDLE = "idle told"
    SILENT = "silent"
    TWO_NETS = "two nets of one core"
    TRACEBACK = "traceback"


@frozen(slots=False)
class Staged:
    """A sheet that was read, and all that is worked out from it."""

    game: Game
    core: Core

    @cached_property
    def net(self) -> tuple[Net | None, tuple[Finding, ...]]:
        made = net_of(self.game, library.granted_sheet(), self.players)
        return made.value, made.findings

    @property
    def players(self) -> Mapping[str, int]:
        if len(self.game.sides) == 1:
            return usual_players(self.game)
        return {side.name: min(max(side.least, LEAST_PLAYERS), side.most) for side in self.game.sides}

    @cached_property
    def counted(self) -> Any:
        """The net in numbers alone, without a word of the sheet."""
        return numbers(self.net[0])

    @cached_property
    def floor(self) -> Any:
        floor = laid_out(self.game, self.players)
        return numbers(floor), numbers(throws(self.core, floor))

    @cached_property
    def teams(self) -> Any:
        return tuple(teams_of(self.game, pupils) for pupils in CLASSES), self.core.play.sides, self.core.play.match


def numbers(value: Any) -> Any:
    """A value without the words that tell of it to people."""
    if isinstance(value, Span | Rule):
        return None
    if isinstance(value, Finding):
        return value.code, value.numbers
    if isinstance(value, tuple):
        return tuple(numbers(each) for each in value)
    if attrs.has(type(value)):
        kept = (part.name for part in attrs.fields(type(value)) if part.name not in TOLD_ONLY)
        return (type(value).__name__, *(numbers(getattr(value, name)) for name in kept))
    return value


def staged(sheet: GameSheet) -> Staged | None:
    """The sheet read; None where it is refused."""
    game = resolve(sheet, library.kit_categories(), weighed=False).value
    core = core_of(game, library.granted_sheet()).value if game is not None else None
    return Staged(game, core) if game is not None and core is not None else None


def exchanged(sheet: GameSheet, section: str, at: int, sentence: Node) -> GameSheet | None:
    """The sheet with another sentence for one of its lines; None where the words of it are no sentence."""
    read = parse_line(section, sentence.words()).value
    if read is None:
        return None
    if section == "head":
        return evolve(sheet, head=_with(sheet.head, at, read))
    parts = (
        evolve(part, lines=_with(part.lines, at, read)) if part.name == section else part for part in sheet.sections
    )
    return evolve(sheet, sections=tuple(parts))


def _with(lines: tuple[Line, ...], at: int, sentence: Node) -> tuple[Line, ...]:
    return (*lines[:at], evolve(lines[at], sentence=sentence), *lines[at + 1 :])


def verdict(before: Staged, section: str, at: int, exchange: Exchange) -> Verdict:
    """What is said of the sheet with that sentence for one of its lines."""
    sheet = exchanged(before.game.sheet, section, at, exchange.sentence)
    if sheet is None or sheet == before.game.sheet:
        return Verdict.UNREAD
    after = staged(sheet)
    if after is None:
        return Verdict.REFUSED
    if exchange.slot in FOR_PEOPLE:
        return Verdict.PEOPLE
    if after.core.play == before.core.play and after.core.facts == before.core.facts:
        if after.counted != before.counted:
            return Verdict.TWO_NETS
        if may_be_alike(exchange, names_of(before.game), section) and _alike_to_both(before, after, section):
            return Verdict.SYNONYM
        return Verdict.GRANTED if says_nothing_new(before, section, at) else Verdict.SILENT
    if any(each.severity is Severity.ERROR for each in after.net[1]):
        return Verdict.REFUSED
    if after.counted != before.counted or after.teams != before.teams or after.floor != before.floor:
        return Verdict.DIFFERS
    if section in ("space", "set-up") and same_on_the_floor(exchange):
        return Verdict.SYNONYM
    may_be = spells_out(exchange) or same_in_one_game(exchange, names_of(before.game), section)
    if may_be and _alike_to_both(before, after, section):
        return Verdict.SYNONYM
    told = _told_idle(after, section, at) or _told_idle(before, section, at)
    return Verdict.IDLE if told else Verdict.SILENT


def _alike_to_both(before: Staged, after: Staged, section: str) -> bool:
    """Whether the second reader finds no difference either; of what is no part of play it reads nothing."""
    return section not in PLAYED or played_alike(before.game.sheet, after.game.sheet, before.players)


def says_nothing_new(before: Staged, section: str, at: int) -> bool:
    """Whether a line says no more than what other lines say, or what holds where nothing is said."""
    sheet = before.game.sheet
    parts = (
        evolve(part, lines=(*part.lines[:at], *part.lines[at + 1 :])) if part.name == section else part
        for part in sheet.sections
    )
    without = staged(evolve(sheet, sections=tuple(parts)))
    return without is not None and without.core.play == before.core.play


def _told_idle(of: Staged, section: str, at: int) -> bool:
    """Whether the check says of the line that it never takes effect, or is not read."""
    place = of.game.sheet.lines(section)[at].span
    net = of.net[0]
    assert net is not None
    told = (*of.net[1], *check(net, LOOKED_AT).findings)
    return any(place in (found.place, *found.others) for found in told)
