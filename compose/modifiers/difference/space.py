"""How two games differ in their space: the court, its areas, its tracks."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.game import Game, GameArea
from grammar.sentences.space import Area, Court, Track

SMALL_CHANGE = 0.005  # a court whose area differs by less than this share is as large as before


def space_differences(one: Game, other: Game) -> Iterator[str]:
    """One sentence for the court and one for each area or track that differs."""
    yield from _court(one, other)
    yield from _areas(one, other)
    yield from _tracks(one, other)


def _court(one: Game, other: Game) -> Iterator[str]:
    before, after = (next(game.all_of("space", Court)) for game in (one, other))
    if one.court_m != other.court_m:
        share = (other.court_m[0] * other.court_m[1]) / (one.court_m[0] * one.court_m[1]) - 1
        how = "" if abs(share) < SMALL_CHANGE else f", {abs(share):.0%} {'more' if share > 0 else 'less'} floor"
        size = f"{after.length.words()} by {after.width.words()}"
        yield f"a court of {size} in place of {before.length.words()} by {before.width.words()}{how}".replace("%", " %")
    if before.cut != after.cut:
        yield f"the court is {after.cut or 'not parted'}, not {before.cut or 'unparted'}"


def _areas(one: Game, other: Game) -> Iterator[str]:
    before, after = ({area.name: area for area in game.areas} for game in (one, other))
    said = {game: {area.name.text: area for area in game.all_of("space", Area)} for game in (one, other)}
    for name, area in after.items():
        if name not in before:
            yield f"a new {area.kind}: {said[other][name].words()}"
        elif said[one][name] != said[other][name]:
            yield _area(before[name], area, said[other][name])
    for name in before:
        if name not in after:
            yield f"no {name}"


def _area(before: GameArea, after: GameArea, said: Area) -> str:
    if before.depth_m and after.depth_m and before.depth_m != after.depth_m:
        return f"the {after.name} is {after.depth_m:g} m deep, not {before.depth_m:g} m"
    return f"the {after.name} is otherwise: {said.words().partition(': ')[2]}"


def _tracks(one: Game, other: Game) -> Iterator[str]:
    before, after = ({track.name.text: track for track in game.all_of("space", Track)} for game in (one, other))
    for name, track in after.items():
        if before.get(name) != track:
            yield track.words() + (f" (before: {before[name].words().partition(': ')[2]})" if name in before else "")
    for name in before:
        if name not in after:
            yield f"no {name}"
