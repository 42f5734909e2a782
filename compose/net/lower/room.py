"""How many players find room in an area: "at most 4 players there" binds everyone whom the rules send there.

An area that every side has for itself has that room for every side; one that all share has it for all together.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.tokens import of_side, player_place, roles_of
from compose.net.net import Room
from grammar.game import GameArea
from grammar.meanings import PlaceMeaning, PlayerMeaning
from grammar.sentences.sides import Placing
from grammar.sentences.space import Area, AtMostThere
from grammar.words import plural


def rooms_for(builder: Builder, side: str, role: str | None, standing: str) -> tuple[Room, ...]:
    """What bounds how many of a side and role are in an area; who is in play or out is bounded by nothing."""
    area = builder.game.area_named(standing)
    if area is None:
        return ()
    return tuple(
        Room(_places(builder, area, rule, side), rule.most.whole)
        for rule in _limits(builder, area)
        if _counts(_who(builder, rule), side, role)
    )


def too_many_at_the_start(builder: Builder) -> None:
    """Tell where the set-up puts more players into an area than find room there."""
    for area in builder.game.areas:
        for rule in _limits(builder, area):
            for side in builder.side_names if area.each else builder.side_names[:1]:
                start = _at_the_start(builder, area, rule, side)
                if start > rule.most.whole:
                    _tell(builder, area, rule, side, start)
                    break


def has_limits(builder: Builder, standing: str) -> bool:
    """Whether the sheet says how many find room in an area."""
    area = builder.game.area_named(standing)
    return area is not None and any(_limits(builder, area))


def _limits(builder: Builder, area: GameArea) -> Iterator[AtMostThere]:
    for sentence in builder.game.all_of("space", Area):
        if sentence.name.text == area.name:
            yield from (rule for rule in sentence.rules if isinstance(rule, AtMostThere))


def _who(builder: Builder, rule: AtMostThere) -> PlayerMeaning:
    meaning = builder.game.meaning(rule.who.name)
    assert isinstance(meaning, PlayerMeaning)
    return meaning


def _counts(who: PlayerMeaning, side: str, role: str | None) -> bool:
    return who.side in (None, side) and who.role in (None, role)


def _places(builder: Builder, area: GameArea, rule: AtMostThere, side: str) -> tuple[int, ...]:
    """The places of all who take up the room that a player of the side would need."""
    who = _who(builder, rule)
    return tuple(
        player_place(builder, each, role, area.name)
        for each in ((side,) if area.each else builder.side_names)
        for role in roles_of(builder, each)
        if _counts(who, each, role)
    )


def _at_the_start(builder: Builder, area: GameArea, rule: AtMostThere, side: str) -> int:
    who = _who(builder, rule)
    return sum(
        place.start
        for (token, *owner), place in builder.places.items()
        if token == "player"
        and owner[2] == area.name
        and _counts(who, str(owner[0]), owner[1])
        and (not area.each or owner[0] == side)
    )


def _tell(builder: Builder, area: GameArea, rule: AtMostThere, side: str, start: int) -> None:
    placing = [each for each in builder.game.placings if _puts_there(builder, each, area)][-1]
    noun = "player" if start == 1 else "players"
    who = of_side(noun, side) if area.each else noun
    there = f"{placing.preposition} the {area.name}"
    title = f"The set-up puts {start} {who} {there}; there is room for {rule.most.whole}."
    name = rule.who.name.text.removesuffix("s")
    whose = name if start == 1 or name.endswith("men") else plural(name)
    hint = f'Let fewer start there, or say in space that there is room: "at most {start} {whose} there".'
    builder.warn("N-room", title, placing, hint)


def _puts_there(builder: Builder, placing: Placing, area: GameArea) -> bool:
    where = builder.game.meaning(placing.where.name)
    who = builder.game.meaning(placing.what.name)
    return isinstance(who, PlayerMeaning) and isinstance(where, PlaceMeaning) and where.place == area.name
