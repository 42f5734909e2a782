"""Set-up sentences → how many tokens every place holds at the start."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, Key
from compose.net.lower.spots import spot_key
from compose.net.lower.tokens import (
    IN,
    ball_place,
    ball_total,
    first_owners,
    player_place,
    roles_of,
    step_place,
    target_place,
    target_total,
)
from grammar.game import GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences.base import Owner
from grammar.sentences.sides import Placing, PlacingOnStep


def place_tokens(builder: Builder) -> None:
    """Make the starting places of all players, targets and balls, and fill them."""
    for side in builder.side_names:
        _players(builder, side)
    for line in builder.game.kit:
        on_step = _on_step(builder, line)
        if on_step is not None:
            _on_track(builder, line, on_step)
        elif line.category == "target":
            for owner in first_owners(builder, line):
                target_place(builder, line.name, owner, "standing")
                builder.start(("target", line.name, owner, "standing"), target_total(builder, line, owner))
        elif line.category == "ball":
            _balls(builder, line)


def _on_step(builder: Builder, line: GameKit) -> PlacingOnStep | None:
    for placing in builder.game.all_of("set-up", PlacingOnStep):
        if placing.what.name.text in (line.name, line.plural):
            return placing
    return None


def _on_track(builder: Builder, line: GameKit, placing: PlacingOnStep) -> None:
    track = builder.game.track_named(placing.track.name.text)
    assert track is not None
    for step in range(track.steps + 1):
        step_place(builder, line.name, step, track.name)
    builder.start(("step", line.name, str(placing.step.whole)), ball_total(builder, line))


def _players(builder: Builder, side: str) -> None:
    left = builder.players[side]
    by_role: dict[str | None, int] = {}
    for role in roles_of(builder, side):
        player_place(builder, side, role, IN)
        if role is not None:
            by_role[role] = next(each.least for each in builder.game.roles if each.name == role)
            left -= by_role[role]
    by_role[None] = left
    for placing in builder.game.placings:
        meaning = builder.game.meaning(placing.what.name)
        if not isinstance(meaning, PlayerMeaning) or meaning.side not in (None, side):
            continue
        where = builder.game.meaning(placing.where.name)
        if not isinstance(where, PlaceMeaning) or where.built_in:
            continue
        free = by_role[meaning.role]
        number = placing.count.whole if placing.count else free
        number = max(free - number, 0) if placing.all_but else min(number, free)
        player_place(builder, side, meaning.role, where.place)
        builder.start(("player", side, meaning.role, where.place), number)
        by_role[meaning.role] -= number
    for role, number in by_role.items():
        builder.start(("player", side, role, IN), max(number, 0))


def _balls(builder: Builder, line: GameKit) -> None:
    left = ball_total(builder, line)
    open_spots: list[Key] = []
    for placing in builder.game.placings:
        if not _places_kit(builder, placing, line):
            continue
        spots = list(_spots(builder, placing, line))
        for spot in spots:
            ball_place(builder, line.name, spot)
            if placing.count is None:
                open_spots.append(spot)
            else:
                number = min(placing.count.whole, left)
                builder.start(("ball", line.name, *spot), number)
                left -= number
    for number, spot in enumerate(open_spots):
        builder.start(("ball", line.name, *spot), left // len(open_spots) + (number < left % len(open_spots)))


def _places_kit(builder: Builder, placing: Placing, line: GameKit) -> bool:
    meaning = builder.game.meaning(placing.what.name)
    if isinstance(meaning, KitMeaning):
        return meaning.key == line.name
    return isinstance(meaning, CategoryMeaning) and meaning.category == line.category


def _spots(builder: Builder, placing: Placing, line: GameKit) -> Iterator[Key]:
    """All places that the phrase means: "in each half" is one for every side."""
    owner = placing.where.owner
    if owner is not None and not isinstance(owner, Owner):
        yield spot_key(builder, placing.preposition, placing.where, owner.name.text, owner.name.text)
        return
    keys = [spot_key(builder, placing.preposition, placing.where, side, side) for side in builder.side_names]
    whose = line.owner if line.owner in builder.side_names else None
    for side, key in zip(builder.side_names, keys, strict=True):
        if whose in (None, side) and key not in keys[: builder.side_names.index(side)]:
            yield key
