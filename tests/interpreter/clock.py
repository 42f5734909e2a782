"""What happens beside attempts: fetching, freeing, coming back, standing up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from grammar.sentences import attempting, freezing, play, queues, resting
from grammar.sentences.base import Np
from tests.interpreter.act import Act
from tests.interpreter.board import DOWN, UP, Board, Spot, State
from tests.interpreter.deeds import alike
from tests.interpreter.foul_play import all_hold, fouled, held
from tests.interpreter.frozen import any_of_them, frozen_of, frozen_spot, means_frozen
from tests.interpreter.names import Folk, Teacher
from tests.interpreter.people import owners_meant, several_of, waits_there
from tests.interpreter.remembered import remembered
from tests.interpreter.room import barred
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import at_hand, half, place_of, spots_of
from tests.interpreter.whose import EVERY, OTHERS, OWN, UNSAID, Of, whose


def acts(sheet: Sheet, board: Board, begin: State, everyone: bool) -> Iterator[Act]:
    """All of it that is possible in a state."""
    for line in sheet.said(resting.Fetch):
        yield from _fetched(sheet, line, board, everyone, granted=False)
    for line in sheet.said(resting.Fetch, granted=True):
        yield from _fetched(sheet, line, board, everyone, granted=True)
    for free in sheet.said(queues.Free):
        yield from _freed(sheet, free, board)
    for back in (each for each in sheet.said(play.ComesBack) if not isinstance(each.time, str)):
        there = [number for number, each in enumerate(board.pupils) if waits_there(sheet, back.where, each)]
        for number in alike(((board.pupils[each]._replace(turn=0), each) for each in there), True):
            yield Act(("comes back",), _back_in(board, (number,)))
    for _ in (each for each in sheet.said(freezing.FrozenBack) if not isinstance(each.time, str)):
        for number in any_of_them(board.waiting(map(frozen_spot, sheet.sides)), board):
            yield Act(("free",), _back_in(board, (number,)))
    for stand_up in sheet.said(play.StandUp):
        yield from _stood_up(sheet, stand_up, board, everyone)
    yield from held(sheet, board, begin, everyone)
    yield from fouled(sheet, board, begin, everyone)
    yield from all_hold(sheet, board, begin)


def _helpers(sheet: Sheet, who: Np, side: str, board: Board) -> list[int]:
    """The pupils in play of a side whom a line means."""
    folk, said = sheet.meaning(who.name), whose(sheet, who)
    if not isinstance(folk, Folk) or folk.side not in (None, side) or (isinstance(said, Of) and said.side != side):
        return []
    return [each for each in board.playing((side,), folk.role) if board.pupils[each].load is None]  # hands are full


def _fetched(sheet: Sheet, line: resting.Fetch, board: Board, everyone: bool, granted: bool) -> Iterator[Act]:
    kinds = sheet.stuff(line.what).kinds
    if isinstance(sheet.meaning(line.who.name), Teacher):
        spots = spots_of(sheet, line.preposition, line.where, owners_meant(sheet, line.where, None))
        for spot in spots:
            fetched = kinds - _left_out(sheet, line, spot)
            goals = [half(sheet, spot.owner)] if spot.owner else [half(sheet, side) for side in sheet.sides]
            for there in dict.fromkeys(goals):
                yield from _brought(board, fetched, spot, there, everyone)
        return
    for side in sheet.sides:
        for spot in spots_of(sheet, line.preposition, line.where, owners_meant(sheet, line.where, side)):
            there = (n for n in _helpers(sheet, line.who, side, board) if not barred(sheet, spot, board.pupils[n]))
            hands = {at_hand(sheet, side, board.pupils[n].role): n for n in there}
            if granted and spot.place == "court" and not sheet.held:
                continue
            fetched = kinds - _spoken_of(sheet, spot, kinds) - _carried_from(sheet, spot) if granted else kinds
            fetched = fetched - _left_out(sheet, line, spot)
            if granted and spot.place == "court":
                fetched = {kind for kind in fetched if side in _senders(sheet, kind) or not _senders(sheet, kind)}
            if not _within_closed(sheet, spot):
                for hand in hands:
                    if spot not in hand:
                        yield from _brought(board, fetched, spot, _own_first(sheet, hand, side), everyone)


@remembered
def _senders(sheet: Sheet, kind: str) -> set[str]:
    """The sides of which somebody may send or carry a ball of a kind: to others a loose one is of no use."""
    found = set[str]()
    for line in sheet.said(attempting.Attempt):
        folk, said = sheet.folk(line.who), whose(sheet, line.who)
        if folk is not None and line.ball is not None and kind in sheet.stuff(line.ball).kinds:
            named = folk.side or (said.side if isinstance(said, Of) else None)
            found |= {named} if named else set(sheet.sides)
    return found


@remembered
def _left_out(sheet: Sheet, line: resting.Fetch, spot: Spot) -> set[str]:
    """The kinds that nobody fetches from a spot, by a line about less than this one."""
    all_said = _reach(sheet, line)
    less = [reach for said in sheet.said(resting.NobodyFetches) if (reach := _reach(sheet, said)) < all_said]
    return {kind for reach in less for kind, at in reach if at == spot}


def _reach(sheet: Sheet, line: resting.Fetch | resting.NobodyFetches) -> set[tuple[str, Spot]]:
    teacher = isinstance(line, resting.NobodyFetches) or isinstance(sheet.meaning(line.who.name), Teacher)
    sides = (None,) if teacher else sheet.sides
    owners = dict.fromkeys(owner for side in sides for owner in owners_meant(sheet, line.where, side))
    spots = spots_of(sheet, line.preposition, line.where, tuple(owners))
    return {(kind, spot) for kind in sheet.stuff(line.what).kinds for spot in spots}


def _own_first(sheet: Sheet, hand: tuple[Spot, ...], side: str) -> Spot:
    return half(sheet, side) if half(sheet, side) in hand else hand[0]


def _brought(board: Board, kinds: Iterable[str], spot: Spot, there: Spot, everyone: bool) -> Iterator[Act]:
    lying = [(each, n) for n, each in enumerate(board.balls) if each.spot == spot and each.kind in kinds]
    for number in alike(lying, everyone):
        if there != spot:
            after = board.copy()
            after.balls[number] = board.balls[number]._replace(spot=there)
            yield Act((board.balls[number].kind,), after)


def _spoken_of(sheet: Sheet, spot: Spot, kinds: Iterable[str]) -> set[str]:
    """The kinds of balls of which the sheet itself says who fetches them from a spot, or that nobody does."""
    lines: tuple[resting.Fetch | resting.NobodyFetches, ...] = (
        *sheet.said(resting.Fetch),
        *sheet.said(resting.NobodyFetches),
    )
    here = [line for line in lines if spot in spots_of(sheet, line.preposition, line.where, sheet.sides)]
    return {kind for kind in kinds if any(kind in sheet.stuff(line.what).kinds for line in here)}


def _carried_from(sheet: Sheet, spot: Spot) -> set[str]:
    """The kinds that some line has carried from there to somewhere, and those that players take home from anywhere."""
    taken = {kind for take in sheet.said(play.Take) for phrase in take.phrases for kind in sheet.stuff(phrase).kinds}
    lines = [line for line in sheet.said(attempting.Attempt) if line.ball is not None]
    ways = [(line, aim) for line in lines for aim in line.aims if isinstance(aim, attempting.AimBetween)]
    there = [line.ball for line, aim in ways if line.ball and place_of(sheet, aim.start) == spot.place]
    return taken | {kind for ball in there for kind in sheet.stuff(ball).kinds}


def _within_closed(sheet: Sheet, spot: Spot) -> bool:
    """Nobody fetches from the middle where nobody enters the zone that lies across it."""
    shut = [each for each in sheet.places.values() if each.shut and each.preposition == "across"]
    return spot.place == "middle" and any(each.by == "middle" for each in shut)


def _freed(sheet: Sheet, free: queues.Free, board: Board) -> Iterator[Act]:
    if isinstance(free.queued, Np):
        yield from _unfrozen(sheet, free, free.queued, board)
        return
    where, helped = free.queued.where, not isinstance(sheet.meaning(free.who.name), Teacher)
    for side in sheet.sides if helped else (None,):
        together = free.number.whole if free.number is not None else 1
        if side is not None and len(_helpers(sheet, free.who, side, board)) < together:
            continue
        shared = None in sheet.owners_of(place_of(sheet, where))
        for owner in owners_meant(sheet, where, side):
            there = board.waiting(spots_of(sheet, None, where, (owner,)))
            if shared and whose(sheet, where) != UNSAID:
                there = [each for each in there if board.pupils[each].side == owner]
            if side is not None:
                there = [each for each in there if board.pupils[each].side == side]  # players free their own
            if there and isinstance(free.queued, queues.AllQueued):
                yield Act(("frees",), _back_in(board, there))
            elif isinstance(free.queued, queues.Queued):
                for some in several_of(sheet, there, free.queued, board) if there else ():
                    yield Act(("frees",), _back_in(board, some))


def _unfrozen(sheet: Sheet, free: queues.Free, phrase: Np, board: Board) -> Iterator[Act]:
    """Pupils free one of their own who froze, or all; the teacher those of any side."""
    meant = means_frozen(sheet, phrase)
    assert meant is not None
    helped = not isinstance(sheet.meaning(free.who.name), Teacher)
    together = free.number.whole if free.number is not None else 1
    for side in sheet.sides if helped else (None,):
        if side is not None and len(_helpers(sheet, free.who, side, board)) < together:
            continue
        there = frozen_of(sheet, meant, owners_meant(sheet, phrase, side), board)
        if phrase.determiner in ("all", "each", "every"):
            yield from [Act(("frees",), _back_in(board, there))] if there else []
        else:
            yield from (Act(("frees",), _back_in(board, (one,))) for one in any_of_them(there, board))


def _back_in(board: Board, numbers: Iterable[int]) -> Board:
    after = board.copy()
    for number in numbers:
        after.go(number, after.pupils[number].side, after.pupils[number].role, "in")
    return after


def _stood_up(sheet: Sheet, line: play.StandUp, board: Board, everyone: bool) -> Iterator[Act]:
    teacher, said = isinstance(sheet.meaning(line.who.name), Teacher), whose(sheet, line.what)
    down = [
        (each, number)
        for number, each in enumerate(board.things)
        if each.kind in sheet.stuff(line.what).kinds and each.how == DOWN
    ]
    for number in alike(down, everyone):
        owner = board.things[number].owner
        if isinstance(said, Of) and owner != said.side and not sheet.solo:
            continue
        helpers = [side for side in sheet.sides if _helpers(sheet, line.who, side, board)]
        if teacher or any(_may_raise(sheet, said, side, owner) for side in helpers):
            after = board.copy()
            after.things[number] = after.things[number]._replace(how=UP)
            yield Act(("stands up", board.things[number].kind), after)


def _may_raise(sheet: Sheet, said: object, side: str, owner: str | None) -> bool:
    if said == OTHERS:
        return owner in sheet.others(side)
    if said == OWN:
        return owner == side
    return owner in (side, None) or said == EVERY or isinstance(said, Of)
