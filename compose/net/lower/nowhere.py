"""Attempts for which there is no floor: their players may use only places in which nobody enters or acts."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.floor import ground_of
from compose.staging.floor.phrases import homes
from compose.staging.floor.regions import Ground
from compose.staging.floor.values import FloorArea, Rectangle
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.meanings import PlayerMeaning
from grammar.sentences import play

SHUT = {"enters", "acts"}


def nowhere_to_act(game: Game) -> Iterator[Finding]:
    """A finding for every attempt whose players are shut out of all the floor that they may use."""
    if not any(SHUT & set(area.forbidden) for area in game.areas):
        return
    ground = ground_of(game)
    for sentence in game.all_of("play", play.Attempt):
        who = game.meaning(sentence.who.name)
        if not isinstance(who, PlayerMeaning):
            continue
        sides = (who.side,) if who.side else tuple(side.name for side in game.sides)
        shut = next(filter(None, (_covering(game, ground, side, who.role) for side in sides)), None)
        if shut is not None:
            verb = "enters" if "enters" in shut.forbidden else "acts in"
            title = f"There is nowhere to do this from: nobody {verb} the {shut.name}, which is all their floor."
            hint = f"Make the {shut.name} less deep, or let players act there."
            yield Finding("N-nowhere", Severity.ERROR, title, sentence.span, hint)


def _covering(game: Game, ground: Ground, side: str, role: str | None) -> FloorArea | None:
    """An area that, by itself or with others like it, takes all the floor of some players."""
    floors = [region.rectangle for region in homes(game, ground, side, role)[0]]
    shut = [area for area in ground.areas if SHUT & set(area.forbidden)]
    found = [next((area for area in shut if _covers(area.rectangle, floor)), None) for floor in floors]
    return found[0] if found and all(found) else None


def _covers(shut: Rectangle, floor: Rectangle) -> bool:
    return shut.joined(floor) == shut
