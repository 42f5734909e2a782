"""Where the players are at the start: as the set-up says, else where they stay."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.staging.floor.ground import Region
from compose.staging.floor.homes import homes_of
from compose.staging.floor.items import Batch, Muster, Size, dealt, shared_out, wanted_of
from compose.staging.floor.lanes import in_line
from compose.staging.floor.regions import regions
from grammar.core.declared import Side
from grammar.core.game import Line, Play
from grammar.core.keeping import kept_by
from grammar.core.values import PLAIN, Laden, Landmark, Part, Population, SideId, Sort, Spot, Upon, without_load

PLAYER = "player"
SIZE_M: Size = (0.5, 1.4)  # assumption: the circle that a standing pupil fills with the elbows out


def player_batches(muster: Muster) -> Iterator[Batch]:
    """Every batch of players, those that the set-up places first."""
    totals = dict(_populations(muster))
    for start, sharing in shared_out(muster, (*muster.core.play.starts, *muster.core.facts.posts)):
        who = start.what
        if isinstance(who, Population) and isinstance(start.at, Spot):
            wanted = wanted_of(start, totals[who], muster.used[who], sharing)
            found = regions(muster.ground, start.at, None, who.side)
            line = muster.core.lines[start.lines[0]]
            for batch in _placed(muster, who, found, min(wanted, totals[who] - muster.used[who]), line):
                yield evolve(batch, how=start.spread)
    for side in muster.core.play.sides:
        yield from _by_their_things(muster, side)
        free = (who for who in muster.core.play.populations(side.id) if not isinstance(who.role, Laden))
        for who in sorted(free, key=lambda each: each.role is PLAIN):
            yield from _unplaced(muster, who, totals[who])


def _populations(muster: Muster) -> Iterator[tuple[Population, int]]:
    """How many players each population has: a role the fewest allowed, all others have none."""
    for side in muster.core.play.side_ids:
        left = muster.players.get(side, 0)
        for who in muster.core.play.populations(side):
            if isinstance(who.role, Laden):
                continue
            role = muster.core.play.role(who)
            if role is not None:
                count = min(role.least, left)
                left -= count
                yield who, count
        yield Population(side, PLAIN), left


def _placed(muster: Muster, who: Population, found: tuple[Region, ...], number: int, line: Line) -> Iterator[Batch]:
    task = without_load(who.role)
    role = None if task is PLAIN else task.key
    for region, count in dealt(found, max(number, 0)):
        first = muster.used[who]
        muster.used[who] += count
        if count:
            yield Batch(PLAYER, PLAYER, who.side, role, count, first, region, None, SIZE_M, line)


def _by_their_things(muster: Muster, side: Side) -> Iterator[Batch]:
    """Where everyone plays for themselves and there are as many targets as players left, each stands by one."""
    play, who = muster.core.play, Population(side.id, PLAIN)
    left = muster.players.get(side.id, 0) - muster.used[who]
    if not side.solo or play.roles or left < 1:
        return
    own = (supply for supply in play.supplies if play.kind(supply.thing.kind).sort is Sort.TARGET)
    things = next((each.thing for each in own if muster.count_of(each.thing) == left), None)
    if things is not None:
        court = (Region(muster.ground.court, side.id),)
        for batch in _placed(muster, who, court, left, muster.core.lines[side.lines[0]]):
            yield evolve(batch, upon=Upon(things.kind, Part.BESIDE))


def _unplaced(muster: Muster, who: Population, total: int) -> Iterator[Batch]:
    """Players that the set-up does not speak of start where they stay, before what they keep; on an undivided floor in
    an equal part of it. Who runs in turn stands where the runs begin."""
    homes = homes_of(muster.core.play, who)
    found = in_line(muster.core.play, muster.ground, who)
    found = found or tuple(region for home in homes for region in _starting(muster, who.side, home.at))
    lines = [muster.core.lines[home.lines[0]] for home in homes]
    side = next(side for side in muster.core.play.sides if side.id == who.side)
    line = next((line for line in lines if not line.granted), muster.core.lines[side.lines[0]])
    before = _before_what_they_keep(muster.core.play, who)
    for batch in _placed(muster, who, found or (_own_part(muster, who.side),), total - muster.used[who], line):
        yield evolve(batch, upon=before)


def _before_what_they_keep(play: Play, who: Population) -> Upon | None:
    """Where those stand whose task it is to keep a thing; who does so besides, where all may, stands anywhere."""
    kept = kept_by(play, who)
    tasked = who.role is not PLAIN or not any(offer.by == who for offer in play.offers)
    return Upon(kept[0].kind, Part.BEFORE) if kept and tasked else None


def _starting(muster: Muster, side: SideId, home: Spot) -> tuple[Region, ...]:
    if home.of is Landmark.COURT and home.part is Part.AT:
        return (_own_part(muster, side),)
    return regions(muster.ground, home, None, side)


def _own_part(muster: Muster, side: SideId) -> Region:
    return Region(muster.ground.slice_of(side), side, muster.ground.facing(side))
