"""What finds no place on the floor at the set-up, and what of all that might mend it does so."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from attrs import evolve

from compose.staging.floor.areas import USUAL_DEPTH_M
from compose.staging.floor.items import Batch
from grammar.core.game import Core
from grammar.core.values import AreaId, Spot
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import Capital, Figure, Listed, Many, Named, Side, Value, Written, said
from grammar.words import plural

Short = tuple[Batch, int]  # with how many of it were placed
Fits = Callable[[int, Core], bool]  # whether all of a line finds its place in another core
MORE_M = (0.0, 0.5, 2.0)  # our choice: so much deeper than what is missing
LARGER_M = (0, 2)  # our choice: a court so much longer or wider than what is missing


def no_room(alike: Sequence[Short], short_m: float, core: Core, fits: Fits) -> Finding:
    """What finds no place, of several sides told as one; `short_m` is how much longer or wider its place would have
    to be."""
    batch = alike[0][0]
    of_sides = any(each.side for each, _ in alike)
    left_out = batch.count - alike[0][1] if of_sides else sum(each.count - placed for each, placed in alike)
    pattern = "{things} finds no place ({line}): {short} m more is needed."
    if left_out > 1:
        pattern = "{things} find no place ({line}): {short} m more is needed."
    noun = batch.role or batch.name
    things: Value = Many(left_out, noun, plural(noun))
    sides = tuple(Side(each.side.key) for each, _ in alike if each.side)
    if sides:
        things = said("{things} of {side}", things=things, side=sides[0])
    if len(sides) > 1:
        things = said("{things} (and likewise of {sides})", things=things, sides=Listed(sides[1:]))
    ways = list(_mends(alike, short_m, core, fits))
    return spoken(
        "P-no-room",
        Severity.WARNING,
        said(pattern, things=things, line=Written(batch.line.words), short=Figure(tenths_up(short_m), ".1f")),
        batch.line.span,
        said("{ways}.", ways=Capital(Listed(tuple(ways), "or"))),
        basis=Basis.COMPUTED,
        numbers=(
            ("short_m", round(short_m, 3)),
            ("placed", float(sum(placed for _, placed in alike))),
            ("wanted", float(sum(each.count for each, _ in alike))),
        ),
    )


def _mends(alike: Sequence[Short], short_m: float, core: Core, fits: Fits) -> Iterator[Value]:
    """What was tried and mends it; fewer where some found a place, and another place always."""
    line = alike[0][0].line.number
    spots = (each.at for each in core.play.starts if line in each.lines and isinstance(each.at, Spot))
    for area in dict.fromkeys(spot.of for spot in spots if isinstance(spot.of, AreaId)):
        deep = next((each for each in _depths(core, area, short_m) if fits(line, _deeper(core, area, each))), None)
        if deep is not None:
            yield said("make the {area} {deep} m deep", area=Named(area.key), deep=Figure(deep))
    long, wide = core.play.court.length_m, core.play.court.width_m
    for more in (math.ceil(short_m) + each for each in LARGER_M):
        sizes = ((long + more, wide), (long, wide + more))
        size = next((each for each in sizes if fits(line, _on_court(core, *each))), None)
        if size is not None:
            long_m, wide_m = (Figure(float(each)) for each in size)
            yield said("make the court {long} m by {wide} m", long=long_m, wide=wide_m)
            break
    if any(placed for _, placed in alike):
        yield "place fewer"
    yield "say another place for them"


def _depths(core: Core, area: AreaId, short_m: float) -> list[float]:
    """Depths of an area in metres that may do, in tenths."""
    found = next(each for each in core.play.areas if each.id == area)
    now = float(found.depth_m) if found.depth_m is not None else USUAL_DEPTH_M[found.kind]
    return [tenths_up(now + short_m + more) for more in MORE_M]


def _deeper(core: Core, area: AreaId, depth_m: float) -> Core:
    deep = Fraction(depth_m).limit_denominator(10)
    areas = tuple(evolve(each, depth_m=deep) if each.id == area else each for each in core.play.areas)
    return evolve(core, play=evolve(core.play, areas=areas))


def _on_court(core: Core, length_m: Fraction, width_m: Fraction) -> Core:
    return evolve(core, play=evolve(core.play, court=evolve(core.play.court, length_m=length_m, width_m=width_m)))


def tenths_up(metres: float) -> float:
    """Whole tenths of a metre that are no less: who takes off so much, or asks for it, has enough."""
    return math.ceil(round(metres * 10, 5)) / 10
