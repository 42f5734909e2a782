"""Sheets whose words are exchanged: the library's games, the examples of the language page, and games nobody wrote."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from random import Random

from attrs import evolve, frozen
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import seed as seeded

import library
from compose.net.net import Net
from grammar.layout import SECTIONS
from grammar.mistakes.examples import examples
from grammar.parse import parse, parse_bytes, parse_line
from grammar.sentences.head import Switch
from grammar.span import Span
from grammar.tree import GameSheet, Line, Section
from tests.game_texts import Sheet, plain_games, written
from tests.net.exchange_verdicts import Staged, says_nothing_new, staged


@frozen
class Place:
    """A line of a sheet whose words may be exchanged."""

    source: str
    before: Staged
    section: str
    at: int


@cache
def library_sheets() -> tuple[GameSheet, ...]:
    """The games of the library as trees, with all switches on: what hangs on one is read, too."""
    read = (parse_bytes(path.read_bytes(), path.name).value for path in library.game_paths())
    return tuple(_switched(rules.games[0], "usually on") for rules in read if rules is not None)


def _switched(sheet: GameSheet, usually: str) -> GameSheet:
    lines = (
        evolve(line, sentence=evolve(line.sentence, usually=usually))
        if isinstance(line.sentence, Switch)
        else line
        for line in sheet.head
    )
    return evolve(sheet, head=tuple(lines))


def _lines(source: str, sheet: GameSheet) -> Iterator[Place]:
    """Each line where it is read: what holds without a switch, with all of them off."""
    usual = _whole(sheet)
    others = [line for line in _all_lines(sheet) if _without_a_switch(line)]
    off = _whole(_switched(sheet, "usually off")) if others else usual
    for section in ("head", *SECTIONS):
        for at, line in enumerate(sheet.lines(section)):
            yield Place(source, off if _without_a_switch(line) else usual, section, at)


def _whole(sheet: GameSheet) -> Staged:
    before = staged(sheet)
    assert before is not None and before.net[0] is not None, sheet.title
    return before


def _all_lines(sheet: GameSheet) -> Iterator[Line]:
    return (line for section in SECTIONS for line in sheet.lines(section))


def _without_a_switch(line: Line) -> bool:
    return line.sentence.words().startswith("not with ")


@cache
def of_library() -> tuple[Place, ...]:
    """Every line of the library's games."""
    return tuple(place for sheet in library_sheets() for place in _lines("library", sheet))


@cache
def of_page(most: int | None = None, seed: int = 0) -> tuple[Place, ...]:
    """Every example of the page, or so many drawn by a seed, in the first game of the library in which it can stand."""
    rows = [(section, row.example) for section in SECTIONS for row in examples().get(section, ())]
    drawn = rows if most is None else Random(seed).sample(rows, most)
    return tuple(place for section, example in drawn if (place := _fitted(section, example)) is not None)


def _fitted(section: str, example: str) -> Place | None:
    """The example in the first game in which it takes part in play, else in the first in which it can stand."""
    sentence = parse_line(section, example).value
    assert sentence is not None, example
    standing: Place | None = None
    for sheet in library_sheets():
        lines = sheet.lines(section)
        alike = [at for at, line in enumerate(lines) if type(line.sentence) is type(sentence)]
        for at in (*alike, len(lines)):
            tried = _with_lines(sheet, section, (*lines[:at], Line(sentence), *lines[at + 1 :]))
            before = staged(tried)
            if before is not None and before.net[0] is not None:
                standing = standing or Place("page", before, section, at)
                played = _takes_part(before.net[0], sentence.span) and not says_nothing_new(before, section, at)
                if section not in ("play", "when", "finish") or played:
                    return Place("page", before, section, at)
    return standing


def _takes_part(net: Net, line: Span) -> bool:
    """Whether anything that can happen, or any end, speaks of a line."""
    acts = (*net.transitions, *net.reactions)
    rules = {rule.span for act in acts for rule in (*act.rules, *(effect.rule for effect in act.effects))}
    return line in rules | {end.rule.span for end in net.ends}


def _with_lines(sheet: GameSheet, section: str, lines: tuple[Line, ...]) -> GameSheet:
    named = {part.name: part for part in sheet.sections}
    named[section] = evolve(named.get(section, Section(section, ())), lines=lines)
    return evolve(sheet, sections=tuple(named[name] for name in SECTIONS if name in named))


def of_generated(seed: int, number: int) -> tuple[Place, ...]:
    """Every line of so many games that nobody wrote."""
    found: list[Place] = []
    quiet = settings(
        max_examples=number,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )

    @seeded(seed)
    @quiet
    @given(plain_games())
    def collect(sheet: Sheet) -> None:
        rules = parse(written(sheet)).value
        before = staged(rules.games[0]) if rules is not None else None
        if before is not None and before.net[0] is not None:
            found.extend(_lines("generated", before.game.sheet))

    collect()
    return tuple(found)
