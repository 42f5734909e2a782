"""The set-up: who and what is where before the first move."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.sentences import then, time, when
from grammar.sentences.ball import BeginsWith
from grammar.sentences.sides import Placing
from tests.interpreter.begin_points import points_at_first
from tests.interpreter.board import DOWN, IN, UP, Ball, Pupil, Spot, State, Thing
from tests.interpreter.hours import WITH_THE_TEACHER, at_s, moments
from tests.interpreter.names import Folk, Somewhere, Stuff
from tests.interpreter.sheet import Sheet, Supply
from tests.interpreter.spots import half, spot, spots_of
from tests.interpreter.whose import OTHERS, Of, side_said, whose

LYING = ("ball", "load")  # what is nobody's but of the place where it lies


def set_up(sheet: Sheet) -> State:
    """All pupils, balls and things in their places, in the order of the sheet."""
    pupils = [each for side in sheet.sides for each in _pupils(sheet, side)]
    turns: dict[Spot, int] = {}
    for number, each in enumerate(pupils):
        if isinstance(each.where, Spot):
            turns[each.where] = turns.get(each.where, -1) + 1
            pupils[number] = each._replace(turn=turns[each.where])
    balls = [ball for kind, sort in sheet.categories.items() if sort in LYING for ball in _balls(sheet, kind)]
    things = [each for kind, sort in sheet.categories.items() if sort not in LYING for each in _things(sheet, kind)]
    tokens, none = (tuple(pupils), tuple(balls), tuple(things)), (0,) * len(sheet.sides)
    return State(*tokens, tuple(points_at_first(sheet)), "", runs=none)


def named(sheet: Sheet) -> dict[str, list[str]]:
    """What every pupil, ball and thing is called, in the order of the set-up: "north 1", "lantern 2 of south"."""
    begin = set_up(sheet)
    found: dict[str, list[str]] = {"pupils": [], "balls": [], "things": []}
    seen: dict[str, int] = {}
    for key, tokens in (("pupils", begin.pupils), ("balls", begin.balls), ("things", begin.things)):
        for each in tokens:
            word = each.side if isinstance(each, Pupil) else each.kind
            owner = f" of {each.owner}" if isinstance(each, Thing) and each.owner else ""
            seen[word + owner] = seen.get(word + owner, 0) + 1
            found[key].append(f"{word} {seen[word + owner]}{owner}")
    return found


def _pupils(sheet: Sheet, side: str) -> Iterator[Pupil]:
    left = {name: role.least for name, role in sheet.roles.items() if side in role.sides}
    left[""] = sheet.players[side] - sum(left.values())
    for placing in sheet.said(Placing):
        who = sheet.meaning(placing.what.name)
        where = sheet.meaning(placing.where.name)
        if not isinstance(who, Folk) or not isinstance(where, Somewhere) or where.place not in sheet.places:
            continue
        if not _speaks_of(sheet, placing, who, side):
            continue
        role = who.role or ""
        asked = left[role] if placing.count is None else placing.count.whole
        put = max(0, left[role] - asked) if placing.all_but else min(asked, left[role])
        left[role] -= put
        yield from [Pupil(side, role, _where_pupils(sheet, placing, side), 0)] * put
    for role, number in left.items():
        yield from [Pupil(side, role, IN, 0)] * max(0, number)


def _speaks_of(sheet: Sheet, placing: Placing, who: Folk, side: str) -> bool:
    said = whose(sheet, placing.what)
    if isinstance(said, Of) and said.side != side:
        return False
    return who.side in (None, side) and (who.role is None or side in sheet.roles[who.role].sides)


def _where_pupils(sheet: Sheet, placing: Placing, side: str) -> Spot:
    said = whose(sheet, placing.where)
    owner = said.side if isinstance(said, Of) else sheet.others(side)[0] if said == OTHERS else side
    return spot(sheet, None, placing.where, owner)


def _placings(sheet: Sheet, kind: str, owner: str | None) -> Iterator[Placing]:
    """The lines that put things of a kind somewhere, if they speak of this owner's."""
    for placing in sheet.said(Placing):
        what, said = sheet.meaning(placing.what.name), whose(sheet, placing.what)
        if isinstance(what, Stuff) and kind in what.kinds and not (isinstance(said, Of) and said.side != owner):
            yield placing


def _where(sheet: Sheet, placing: Placing, owner: str | None) -> tuple[Spot, ...]:
    """The spots of a placing for things that belong, or are dealt, to a side (None: to all)."""
    said, meant = whose(sheet, placing.where), sheet.meaning(placing.where.name)
    of_balls = sheet.stuff(placing.what).category == "ball" and placing.preposition in ("in", "on")
    if isinstance(meant, Stuff) and of_balls:
        return tuple(half(sheet, side) for side in ((owner,) if owner else sheet.sides))  # a crate of each side
    if not isinstance(meant, Somewhere):
        return ()
    sides: tuple[str, ...] = (owner,) if owner else sheet.sides
    if isinstance(said, Of):
        dealt_elsewhere = sheet.stuff(placing.what).category == "ball" and owner not in (None, said.side)
        sides = () if dealt_elsewhere else (said.side,)
    elif said == OTHERS and owner:
        sides = sheet.others(owner)
    return spots_of(sheet, placing.preposition, placing.where, sides)


def _balls(sheet: Sheet, kind: str) -> Iterator[Ball]:
    """Each supply lies where the set-up puts it: so many, and the rest evenly where no number is said.

    What comes in later is with the teacher till then.
    """
    later = _coming(sheet, kind)
    for supply in sheet.supplies:
        if supply.kind == kind:
            kept = min(later, supply.number)
            later -= kept
            yield from [Ball(kind, WITH_THE_TEACHER)] * kept
            at_first = evolve(supply, number=supply.number - kept)
            yield from (Ball(kind, where) for where, _ in _shared_out(sheet, at_first, 1) if where)


def _coming(sheet: Sheet, kind: str) -> int:
    """How many of a kind come in while play goes on."""
    found = 0
    for rule in sheet.said(when.When):
        for said in rule.consequences:
            if isinstance(said, then.ComesIn) and kind in sheet.stuff(said.name).kinds:
                whole = said.determiner in ("all", "every", "each")
                times = (
                    sum(moment % at_s(sheet, rule.event) == 0 for moment in moments(sheet))
                    if (isinstance(rule.event, time.EveryTime))
                    else 1
                )
                found += 0 if whole else times * (said.number.whole if said.number else 1)
    return found


def _shared_out(sheet: Sheet, supply: Supply, parts: int) -> Iterator[tuple[Spot | None, bool]]:
    """Where each of a supply lies or stands, and whether it is down: so many here and there, the rest evenly where no
    number is said."""
    left = supply.number * parts
    open_to: list[tuple[Spot, bool]] = []
    for placing in _placings(sheet, supply.kind, supply.owner):
        for where in _where(sheet, placing, supply.owner):
            there = (where, placing.lying is not None)
            if placing.count is None:
                open_to.append(there)
                continue
            put = min(placing.count.whole * parts, left)
            left -= put
            yield from [there] * put
    for begins in sheet.said(BeginsWith):
        if supply.kind in sheet.stuff(begins.ball).kinds:
            said = side_said(sheet, begins.side)
            for side in (said.side,) if isinstance(said, Of) else sheet.sides:
                if supply.owner not in (None, side):
                    continue
                if begins.number is None:
                    open_to.append((half(sheet, side), False))
                    continue
                put = min(begins.number, left)
                left -= put
                yield from [(half(sheet, side), False)] * put
    for turn, there in enumerate(open_to):
        yield from [there] * (left // len(open_to) + (turn < left % len(open_to)))
    yield from [(None, False)] * (0 if open_to else left)


def _things(sheet: Sheet, kind: str) -> Iterator[Thing]:
    for supply in sheet.supplies:
        if supply.kind == kind and kind in sheet.tracks:
            step = sheet.tracks[kind][1]
            yield from [Thing(kind, supply.owner, step, None, False)] * (supply.number * supply.parts)
        elif supply.kind == kind:
            places = _shared_out(sheet, supply, supply.parts)
            yield from (Thing(kind, supply.owner, DOWN if down else UP, place, False) for place, down in places)
