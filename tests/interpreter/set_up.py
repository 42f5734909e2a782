"""The set-up: what is where before the first move."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.game import GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning
from grammar.sentences.base import OwnerName
from grammar.sentences.sides import Placing
from tests.interpreter.board import IN, Counts, ball, player, step, target
from tests.interpreter.sheet import Sheet, Spot


def set_up(sheet: Sheet) -> Counts:
    """All players, targets and balls in their places."""
    counts: Counts = {}
    for side in sheet.sides:
        _players(sheet, side, counts)
    for line in sheet.game.kit:
        track = sheet.track(line.name)
        if track is not None:
            counts[step(line.name, track[1])] = sheet.number_in_all(line)
        elif line.category == "target":
            for owner in sheet.first_owners(line):
                counts[target(line.name, owner, "standing")] = sheet.number(line, owner) * line.parts
        elif line.category == "ball":
            _balls(sheet, line, counts)
    return counts


def _players(sheet: Sheet, side: str, counts: Counts) -> None:
    left: dict[str | None, int] = {role.name: role.least for role in sheet.game.roles if role.side in (None, side)}
    left[None] = sheet.players[side] - sum(left.values())
    for placing in sheet.said(Placing):
        who = sheet.players_meant(placing.what)
        where = sheet.area(placing.where)
        if who is None or who.side not in (None, side) or where == IN:
            continue
        there = left[who.role]
        asked = there if placing.count is None else placing.count.whole
        put = max(0, there - asked) if placing.all_but else min(asked, there)
        name = player(side, who.role, where)
        counts[name] = counts.get(name, 0) + put
        left[who.role] -= put
    for role, number in left.items():
        name = player(side, role, IN)
        counts[name] = counts.get(name, 0) + max(0, number)


def _balls(sheet: Sheet, line: GameKit, counts: Counts) -> None:
    left = sheet.number_in_all(line)
    open_to: list[Spot] = []
    for placing in sheet.said(Placing):
        meaning = sheet.game.meaning(placing.what.name)
        named = isinstance(meaning, KitMeaning) and meaning.key == line.name
        if not named and not (isinstance(meaning, CategoryMeaning) and meaning.category == "ball"):
            continue
        for spot in _spots(sheet, placing, line):
            if placing.count is None:
                open_to.append(spot)
                continue
            put = min(placing.count.whole, left)
            counts[ball(line.name, spot)] = counts.get(ball(line.name, spot), 0) + put
            left -= put
    share, more = divmod(left, len(open_to)) if open_to else (0, 0)
    for number, spot in enumerate(open_to):
        name = ball(line.name, spot)
        counts[name] = counts.get(name, 0) + share + (1 if number < more else 0)


def _spots(sheet: Sheet, placing: Placing, line: GameKit) -> Iterator[Spot]:
    """Each spot once: "in each half" is one for every side, "in the middle" is one."""
    meaning = sheet.game.meaning(placing.where.name)
    assert isinstance(meaning, PlaceMeaning)
    seen: set[Spot] = set()
    owner = placing.where.owner
    owned = line.owner if line.owner in sheet.sides else None
    sides = sheet.sides[:1] if isinstance(owner, OwnerName) else sheet.sides
    for side in sides:
        spot = sheet.spot(placing.preposition, placing.where, side, side)
        if spot not in seen and owned in (None, side):
            seen.add(spot)
            yield spot
