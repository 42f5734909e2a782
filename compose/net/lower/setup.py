"""Where everything starts → how many tokens every place holds at the set-up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.net.lower.builder import Builder
from compose.net.lower.tokens import ball_place, how_many, player_place, step_place, store_place, target_place
from grammar.core.declared import All, AllBut, Start
from grammar.core.schedule import held_back
from grammar.core.values import (
    PLAIN,
    At,
    KindId,
    Laden,
    OnStep,
    Population,
    Posture,
    Presence,
    SideId,
    Sort,
    Spot,
    Thing,
)
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import Listed, Many, Side, said
from grammar.words import plural


def place_tokens(builder: Builder) -> None:
    """Make the starting places of all players, things and balls, and fill them."""
    for side in builder.play.side_ids:
        builder.findings.extend(_players(builder, side))
    for kind in builder.play.kinds:
        track = builder.play.track_of(kind.id)
        if track is not None:
            for step in range(track.steps + 1):
                step_place(builder, kind.id, step)
            _on_steps(builder, kind.id)
        elif kind.sort in (Sort.TARGET, Sort.BODY):
            for thing in builder.play.things(kind.id):
                every, lying = how_many(builder, kind.id, thing.owner), _lying(builder, thing)
                builder.start(target_place(builder, thing, Posture.UP), every - lying)
                if lying:
                    builder.start(target_place(builder, thing, Posture.DOWN), lying)
        elif kind.sort is Sort.BALL:
            builder.findings.extend(_balls(builder, kind.id))
        elif kind.sort is Sort.LOAD:
            _loads(builder, kind.id)


def _lying(builder: Builder, thing: Thing) -> int:
    """How many of a thing are down at the set-up."""
    left = every = how_many(builder, thing.kind, thing.owner)
    lying, parts = 0, builder.play.kind(thing.kind).parts
    for start in sorted((each for each in builder.play.starts if each.what == thing), key=_unnumbered):
        number = min(start.count * parts if isinstance(start.count, int) else _wanted(start, left), left)
        left -= number
        lying += number if start.down else 0
    return min(lying, every)


def _unnumbered(start: Start) -> bool:
    return not isinstance(start.count, int)


def _on_steps(builder: Builder, kind: KindId) -> None:
    for thing in builder.play.things(kind):
        starts = [start.at for start in builder.play.starts if start.what == thing and isinstance(start.at, OnStep)]
        for at in starts[:1]:
            builder.start(step_place(builder, kind, at.step), how_many(builder, kind, thing.owner))


def _players(builder: Builder, side: SideId) -> Iterator[Finding]:
    left = dict.fromkeys(builder.play.populations(side), 0)
    left[Population(side, PLAIN)] = builder.players[side]
    for who in left:
        player_place(builder, who, Presence.PLAYING)
        role = builder.play.role(who)
        if role is not None and not isinstance(who.role, Laden):
            left[who] = min(role.least, left[Population(side, PLAIN)])
            left[Population(side, PLAIN)] -= left[who]
    for start in builder.play.starts:
        if start.what not in left or not isinstance(start.what, Population) or not isinstance(start.at, Spot):
            continue
        wanted = _wanted(start, left[start.what])
        if wanted > left[start.what]:
            yield _too_many(builder, start, wanted, left[start.what])
        number = min(wanted, left[start.what])
        builder.start(player_place(builder, start.what, At(start.at)), number)
        left[start.what] -= number
    for who, number in left.items():
        builder.start(player_place(builder, who, Presence.PLAYING), number)


def _too_many(builder: Builder, start: Start, wanted: int, left: int) -> Finding:
    assert isinstance(start.what, Population)
    title = f"The set-up puts {wanted} players of {start.what.side.key} there; only {left} are left for it."
    place = builder.core.lines[start.lines[0]].span
    return Finding("N-players", Severity.ERROR, title, place, "Put fewer there, or play with more.")


def _wanted(start: Start, left: int) -> int:
    match start.count:
        case int():
            return start.count
        case AllBut():
            return max(left - start.count.count, 0)
        case All():
            return left


def _loads(builder: Builder, kind: KindId) -> None:
    """What players take from place to place lies where the set-up puts it, each owner's by itself."""
    for thing in builder.play.things(kind):
        left = how_many(builder, kind, thing.owner)
        starts = [start for start in builder.play.starts if start.what == thing and isinstance(start.at, Spot)]
        for start, later in zip(starts, range(len(starts) - 1, -1, -1), strict=True):
            assert isinstance(start.at, Spot)
            number = min(_wanted(start, -(-left // (later + 1))), left)
            builder.start(ball_place(builder, kind, start.at), number)
            left -= number


def _balls(builder: Builder, kind: KindId) -> Iterator[Finding]:
    """Counted ones first come, then all that are left are shared out over the other places."""
    later = held_back(builder.play, kind)
    left = max(how_many(builder, kind) - later, 0)
    if later:
        builder.start(store_place(builder, kind), min(later, how_many(builder, kind)))
    starts = [start for start in builder.play.starts if isinstance(start.what, Thing) and start.what.kind == kind]
    rest: dict[Spot, Start] = {}
    for start in starts:
        if not isinstance(start.at, Spot):
            continue
        place = ball_place(builder, kind, start.at)
        if isinstance(start.count, int):
            number = min(start.count, left)
            builder.start(place, number)
            left -= number
        else:
            rest[start.at] = start
            left -= start.count.count if isinstance(start.count, AllBut) else 0
    each, over = divmod(max(left, 0), len(rest)) if rest else (0, 0)
    shares = {spot: each + (number < over) for number, spot in enumerate(rest)}
    for spot, share in shares.items():
        builder.start(ball_place(builder, kind, spot), share)
    if over:
        yield from _uneven(builder, kind, shares, rest)


def _uneven(
    builder: Builder, kind: KindId, shares: Mapping[Spot, int], rest: Mapping[Spot, Start]
) -> Iterator[Finding]:
    """Balls that do not go into the places of the sides without one over."""
    owners = [spot.owner.key for spot in shares if isinstance(spot.owner, SideId)]
    if len(owners) == len(shares):
        left, fewest = sum(shares.values()), min(shares.values())
        each = (
            said("{number} for {side}", number=share, side=Side(owner))
            for share, owner in zip(shares.values(), owners, strict=True)
        )
        balls = Many(left, kind.key, dict(builder.core.plurals).get(kind, plural(kind.key)))
        title = said("The {balls} cannot be shared evenly: {shares}.", balls=balls, shares=Listed(tuple(each)))
        hint = "Play with one more or one less, or say where each of them lies."
        place = builder.core.lines[next(iter(rest.values())).lines[0]].span
        numbers = (("over", float(left - fewest * len(shares))),)
        yield spoken("N-uneven", Severity.NOTE, title, place, hint, basis=Basis.PROVED, numbers=numbers)
