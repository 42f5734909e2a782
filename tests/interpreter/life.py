"""Lives as the second reader has them: how many each pupil has, and what comes of one less or more."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.sentences import claims, events, finish, freezing, lives, queues, resting, then, when
from grammar.sentences.ball import RestTo
from grammar.sentences.base import Node, Np
from tests.interpreter.asked import claims_in
from tests.interpreter.board import IN, NO_LIFE, Board, Pupil, State
from tests.interpreter.events import Scene, Settled, holding
from tests.interpreter.frozen import PLACE
from tests.interpreter.most_lives import means, most_lives
from tests.interpreter.names import Folk, Stuff
from tests.interpreter.remembered import remembered
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of


def in_full(sheet: Sheet, state: State) -> State:
    """Whoever has come into play without a life has all of them; so has whoever never had one less."""
    if not any(True for _ in sheet.tree.all_of("sides", lives.HasLives)):
        return state
    pupils = tuple(each._replace(lives=_left(sheet, each)) for each in state.pupils)
    return state if pupils == state.pupils else state._replace(pupils=pupils)


def _left(sheet: Sheet, pupil: Pupil) -> int:
    """How many lives a pupil has left there: none of their own where nobody comes with some of them left."""
    full = most_lives(sheet, pupil.side, pupil.role)
    if pupil.where != IN and (isinstance(pupil.where, str) or pupil.where.place not in _kept(sheet)):
        return 0
    if pupil.lives < 0 and pupil.where != IN:
        return pupil.lives if full else 0
    return min(pupil.lives, full) if pupil.lives > 0 else full


@remembered
def _kept(sheet: Sheet) -> frozenset[str]:
    """The places to which some line sends pupils, but for the last life; of all who change at once nobody keeps any."""
    rules = [rule for granted in (False, True) for rule in sheet.said(when.When, granted=granted)]
    sent = [(rule, said) for rule in rules if not isinstance(rule.event, lives.LastLife) for said in rule.consequences]
    found = {place for rule, said in sent for place in _sent_to(sheet, rule, said)}
    if _are_counted(sheet):
        found |= {each.where.place for each in set_up(sheet).pupils if not isinstance(each.where, str)}
    return frozenset(found)


def _are_counted(sheet: Sheet) -> bool:
    """Whether the sheet speaks of how many lives a side has left."""
    claimed = (claim.counted for line in sheet.said(Node) for claim in claims_in(line))
    results = (each for line in sheet.said(finish.After) for each in line.results)
    results = (*results, *(line.result for line in sheet.said(finish.EndsWhen)))
    compared = (each.counted for each in results if isinstance(each, finish.MoreWins))
    return any(isinstance(each, claims.CountedLives) for each in (*claimed, *compared))


def _sent_to(sheet: Sheet, rule: when.When, said: when.Consequence) -> Iterator[str]:
    match said:
        case freezing.Freezes():
            yield PLACE
        case then.Waits():
            yield place_of(sheet, said.where)
        case then.MovesTo(place=RestTo() | resting.RestThere() as place):
            yield from [place_of(sheet, place.where)] if not _is_stuff(sheet, said.who) else []
        case then.Joins(what=Np() as what) if sheet.sidemeans(sheet.meaning(what.name)) is None:
            yield place_of(sheet, what)
        case then.ChangesPlaces(other=queues.Queued() as other):
            yield place_of(sheet, other.where)
        case then.ChangesPlaces() if isinstance(rule.event, events.Caught) and rule.event.where is not None:
            yield place_of(sheet, rule.event.where)


def _is_stuff(sheet: Sheet, who: object) -> bool:
    return isinstance(who, Np) and isinstance(sheet.meaning(who.name), Stuff)


def lose_or_win(sheet: Sheet, said: lives.LosesLife | lives.WinsLife, chosen: Sequence[int], board: Board) -> Board:
    """One life less or more for each of them; those are noted who have lost the last."""
    for number in chosen:
        pupil = board.pupils[number]
        most = most_lives(sheet, pupil.side, pupil.role)
        if not most or pupil.where != IN:
            continue
        if isinstance(said, lives.WinsLife):
            board.pupils[number] = pupil._replace(lives=min(pupil.lives + 1, most))
        elif pupil.lives > 1:
            board.pupils[number] = pupil._replace(lives=pupil.lives - 1)
        else:
            board.pupils[number] = pupil._replace(lives=NO_LIFE)
            board.lost = (*board.lost, number)
    return board


def after_the_last(sheet: Sheet, number: int, board: Board) -> tuple[Scene, list[Settled]]:
    """What the rules say of a pupil who has lost the last life."""
    pupil = board.pupils[number]
    scene = Scene(pupil.side, sheet.only_other(pupil.side), keeping=pupil.side, loser=number)
    return scene, holding(sheet, scene, list(_rules(sheet, pupil.side, pupil.role)), board)


def _rules(sheet: Sheet, side: str, role: str) -> Iterator[tuple[when.When, bool, int]]:
    for granted in (False, True):
        for rule in sheet.said(when.When, granted=granted):
            event = rule.event
            if isinstance(event, lives.LastLife) and means(sheet, event, side, role):
                folk = sheet.meaning(event.who.name)
                assert isinstance(folk, Folk)
                yield rule, not granted, int(folk.role is not None) + int(folk.side is not None)
