"""At what or whom a pupil may aim in a state: one aim for each thing, player, line, mate or way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from attrs import frozen

from grammar.sentences import attempting
from grammar.sentences.base import Np
from tests.interpreter.board import DOWN, IN, UP, Board, Pupil, Spot
from tests.interpreter.frozen import frozen_spot, means_frozen
from tests.interpreter.names import Folk
from tests.interpreter.roaming import runs_there
from tests.interpreter.room import barred
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of, spot, stands
from tests.interpreter.whose import OTHERS, OWN, UNSAID, Of, Whose, whose


@frozen
class Target:
    """One aim: "target", "player", "ring", "line", "mate" or "way", with what is aimed at by its number.

    `concerned` is the side against which it goes, `sent` the side to whose half the ball flies. On a way `in_hand` goes
    whoever has the ball of their side, from wherever they are. A thing `of_nobody` is no side's.
    """

    what: str
    concerned: str | None
    sent: str | None
    thing: int | None = None
    hit: int | None = None
    mate: int | None = None
    spot: Spot | None = None
    carried_for_good: bool = False
    in_hand: bool = False
    of_nobody: bool = False


def targets(sheet: Sheet, sentence: attempting.Attempt, actor: int, board: Board, everyone: bool) -> Iterator[Target]:
    """All that the pupil may aim at by a line of play; of what stands alike one stands for all."""
    pupil = board.pupils[actor]
    for aim in sentence.aims:
        match aim:
            case attempting.AimAt() | attempting.AimThrough() if isinstance(sheet.meaning(aim.what.name), Folk):
                load = aim.load if isinstance(aim, attempting.AimAt) else None
                yield from hit_aims(sheet, aim.what, actor, board, everyone, load)
            case attempting.AimAt() | attempting.AimThrough():
                yield from _things(sheet, aim, pupil, board, everyone)
            case attempting.AimPast():
                yield from _lines(sheet, aim.what, pupil)
            case attempting.AimTo() if "carry" in sentence.skills:
                yield from _onwards(sheet, aim, pupil)
            case attempting.AimTo():
                yield from _mates(sheet, aim, actor, board, everyone)
            case attempting.AimBetween():
                yield from _ways(sheet, sentence, aim, pupil, board, everyone)


def aimed_sides(sheet: Sheet, said: Whose, side: str) -> tuple[tuple[str, ...], bool]:
    """The sides that are aimed at, and whether what nobody owns is, too."""
    if sheet.solo:
        return sheet.sides, True
    if isinstance(said, Of):
        return ((said.side,) if said.side != side else ()), False
    if said in (UNSAID, OTHERS):
        return sheet.others(side), said == UNSAID
    return ((side,) if said == OWN else sheet.sides), False


def against(sheet: Sheet, owner: str | None, side: str) -> str | None:
    """The side concerned: whose it is, else the other side where there are two."""
    return owner if owner is not None else sheet.only_other(side)


def _first(tokens: Iterable[tuple[object, int]], everyone: bool) -> Iterator[int]:
    seen: set[object] = set()
    for token, number in tokens:
        if everyone or token not in seen:
            seen.add(token)
            yield number


def carries(sheet: Sheet, pupil: Pupil, load: Np) -> bool:
    """Whether somebody carries such a thing, or nothing where the phrase says so."""
    if load.name.text == "nothing":
        return pupil.load is None
    return pupil.load is not None and pupil.load.kind in sheet.stuff(load).kinds


def hit_aims(
    sheet: Sheet, phrase: Np, actor: int, board: Board, everyone: bool, load: Np | None = None
) -> Iterator[Target]:
    """The pupils of a phrase at whom another pupil may aim."""
    who, side = sheet.folk(phrase), board.pupils[actor].side
    assert who is not None
    said = Of(who.side) if who.side and not sheet.solo else whose(sheet, phrase)
    sides, _ = aimed_sides(sheet, said, side)
    spared = {name for name, role in sheet.roles.items() if not role.aimed_at and who.role is None}
    there = [n for n in board.playing(sides, who.role) if n != actor and board.pupils[n].role not in spared]
    there = [n for n in there if load is None or carries(sheet, board.pupils[n], load)]
    for number in _first(((board.pupils[n], n) for n in there), everyone):
        hit = board.pupils[number].side
        yield Target("player", hit, hit, hit=number)


def _things(
    sheet: Sheet, aim: attempting.AimAt | attempting.AimThrough, pupil: Pupil, board: Board, everyone: bool
) -> Iterator[Target]:
    stuff = sheet.stuff(aim.what)
    sides, shared = aimed_sides(sheet, whose(sheet, aim.what), pupil.side)
    order = aim.standing_or_not if isinstance(aim, attempting.AimAt) else None
    may_be = (UP, DOWN) if order == "standing or not" else (UP,)
    there = [
        (each, number)
        for number, each in enumerate(board.things)
        if each.kind in stuff.kinds
        and (each.owner in sides or (shared and each.owner is None))
        and (each.how in may_be or isinstance(each.how, int))
    ]
    if order == "in order":
        there = list({(each.kind, each.owner): (each, number) for each, number in reversed(there)}.values())
    for number in _first(there, everyone):
        owner = board.things[number].owner
        ring = stuff.category == "ring" or isinstance(aim, attempting.AimThrough)
        concerned = against(sheet, owner, pupil.side)
        yield Target("ring" if ring else "target", concerned, concerned, thing=number, of_nobody=owner is None)


def _lines(sheet: Sheet, phrase: Np, pupil: Pupil) -> Iterator[Target]:
    sides, _ = aimed_sides(sheet, whose(sheet, phrase), pupil.side)
    for line in dict.fromkeys(spot(sheet, None, phrase, side) for side in sides):
        concerned = against(sheet, line.owner, pupil.side)
        yield Target("line", concerned, concerned, spot=line)


def _mates(sheet: Sheet, aim: attempting.AimTo, actor: int, board: Board, everyone: bool) -> Iterator[Target]:
    """Another pupil of one's own side, in play or where the line says."""
    side, who = board.pupils[actor].side, sheet.folk(aim.what) or means_frozen(sheet, aim.what)
    role = who.role if who is not None else None
    mates = [
        (each, number)
        for number, each in enumerate(board.pupils)
        if each.side == side and role in (None, each.role) and number != actor and _stands(sheet, aim, side, each.where)
    ]
    for number in _first(mates, everyone):
        where = board.pupils[number].where
        sent = where.owner if isinstance(where, Spot) and where.owner else side
        here = where if isinstance(where, Spot) else None
        yield Target("mate", sheet.only_other(side), sent, mate=number, spot=here)
    yield from _running_there(sheet, aim, actor, role, board, everyone)


def _running_there(
    sheet: Sheet, aim: attempting.AimTo, actor: int, role: str | None, board: Board, everyone: bool
) -> Iterator[Target]:
    """Another pupil of one's own side who runs as they play into the area that the line names."""
    side = board.pupils[actor].side
    if aim.where is None or means_frozen(sheet, aim.what) is not None or place_of(sheet, aim.where) not in sheet.places:
        return
    for where in stands(sheet, aim.where, side):
        mates = [
            (each, number)
            for number, each in enumerate(board.pupils)
            if (each.side, each.where) == (side, IN) and role in (None, each.role) and number != actor
            and runs_there(sheet, where, each)
        ]  # fmt: skip
        for number in _first(mates, everyone):
            yield Target("mate", sheet.only_other(side), where.owner or side, mate=number, spot=where)


def _stands(sheet: Sheet, aim: attempting.AimTo, side: str, where: str | Spot) -> bool:
    if means_frozen(sheet, aim.what) is not None:
        return where == frozen_spot(side)
    if aim.where is None or place_of(sheet, aim.where) not in sheet.places:
        return where == IN
    said = whose(sheet, aim.where)
    if not isinstance(where, Spot) or where.place != place_of(sheet, aim.where):
        return False
    if isinstance(said, Of):
        return where.owner == said.side
    if said in (OWN, OTHERS):
        return (where.owner == side) == (said == OWN)
    return True


def _onwards(sheet: Sheet, aim: attempting.AimTo, pupil: Pupil) -> Iterator[Target]:
    """With the ball to a place, from wherever they are."""
    goal = _goal(sheet, aim.what, pupil.side)
    if not barred(sheet, goal, pupil):
        concerned = against(sheet, goal.owner, pupil.side)
        yield Target("way", concerned, concerned, spot=goal, in_hand=True)


def _ways(
    sheet: Sheet, sentence: attempting.Attempt, aim: attempting.AimBetween, pupil: Pupil, board: Board, everyone: bool
) -> Iterator[Target]:
    """From one place to another, with a load of one's own or nobody's where the line names one."""
    start, end = ((place_of(sheet, each), whose(sheet, each)) for each in (aim.start, aim.goal))
    back_and_forth = start == end
    goal = _goal(sheet, aim.goal, pupil.side)
    if any(barred(sheet, each, pupil) for each in (goal, *way_start(sheet, aim, pupil.side))):
        return
    concerned = sheet.only_other(pupil.side)
    if sentence.ball is None or sheet.stuff(sentence.ball).category == "ball":
        yield Target("way", concerned, concerned, spot=goal, carried_for_good=not back_and_forth)
        return
    kinds = sheet.stuff(sentence.ball).kinds
    loads = [
        (each, number)
        for number, each in enumerate(board.things)
        if each.kind in kinds and each.owner in (pupil.side, None) and each.how == UP and not each.brought
    ]
    for number in _first(loads, everyone):
        yield Target("way", concerned, concerned, thing=number, spot=goal, carried_for_good=not back_and_forth)


def way_start(sheet: Sheet, aim: attempting.AimBetween, side: str) -> tuple[Spot, ...]:
    """Where what is carried is taken up."""
    return (_goal(sheet, aim.start, side),)


def _goal(sheet: Sheet, phrase: Np, side: str) -> Spot:
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        return spot(sheet, None, phrase, said.side)
    if said == OTHERS:
        return spot(sheet, None, phrase, sheet.others(side)[0])
    return spot(sheet, None, phrase, side)
