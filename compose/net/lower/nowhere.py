"""Attempts for which there is no floor: their players may use only places in which nobody enters or acts."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.floor import ground_of
from compose.net.floor_phrases import homes
from compose.net.floor_values import FloorArea, Rectangle
from compose.net.lower.builder import Builder
from grammar.meanings import PlayerMeaning
from grammar.sentences import play


def nowhere_to_act(builder: Builder) -> None:
    """Tell of every attempt whose players are shut out of all the floor that they may use."""
    for sentence in builder.game.all_of("play", play.Attempt):
        who = builder.game.meaning(sentence.who.name)
        if not isinstance(who, PlayerMeaning):
            continue
        sides = (who.side,) if who.side else builder.side_names
        for side in sides:
            shut = next(_shut_out(builder, side, who.role), None)
            if shut is not None:
                verb = "enters" if "enters" in shut.forbidden else "acts in"
                title = f"There is nowhere to do this from: nobody {verb} the {shut.name}, which is all their floor."
                builder.warn("N-nowhere", title, sentence, f"Make the {shut.name} less deep, or let players act there.")
                break


def _shut_out(builder: Builder, side: str, role: str | None) -> Iterator[FloorArea]:
    """The area that covers all the floor of some players, where there is one."""
    ground = ground_of(builder.game)
    if not builder.game.halved and side not in ground.sides:
        return
    found, _ = homes(builder.game, ground, side, role)
    floors = [region.rectangle for region in found]
    closed = [area for area in ground.areas if {"enters", "acts"} & set(area.forbidden)]
    covering = [next((area for area in closed if _covers(area.rectangle, floor)), None) for floor in floors]
    if covering and all(area is not None for area in covering):
        yield from (area for area in covering if area is not None)


def _covers(shut: Rectangle, floor: Rectangle) -> bool:
    return shut.joined(floor) == shut
