"""Benches that a game needs and its kit does not list: one for each place that is a bench, on all courts together."""

from __future__ import annotations

from collections.abc import Mapping

from compose.staging.cupboard import KitRow
from compose.staging.floor.areas import benches_in
from compose.staging.resolved import resolved
from grammar.core.area_kind import AreaKind
from grammar.game import Game, GameKit
from library import KitItem

BENCH = "bench"


def benches_of(game: Game, courts: int, kit: Mapping[str, KitItem]) -> KitRow | None:
    """The benches of all courts as a line of kit; None where the kit lists some, or no place is a bench. They are not
    held against a cupboard: a hall has benches, and what a sheet does not list no class is asked to own."""
    if any(line.like in kit and kit[line.like].name == BENCH for line in game.kit):
        return None
    play = resolved(game).play
    on_a_court = sum(area.places * benches_in(play, area) for area in play.areas if area.kind is AreaKind.BENCH)
    if not on_a_court:
        return None
    bench = kit[BENCH]
    span = next(area.span for area in game.areas if area.kind == AreaKind.BENCH.value)
    line = GameKit(bench.name, bench.plural, bench.category, on_a_court, None, bench.name, span)
    return KitRow(line, on_a_court * courts, on_a_court * courts)
