"""What must come of a drawn game by its records alone, held against what the second reader played from its sheet."""

from __future__ import annotations

from collections.abc import Iterator

from tests.interpreter.board import DOWN, IN, OUT, UP, Board, Spot, State
from tests.interpreter.deeds import REACHED, Deed, deeds
from tests.interpreter.drawn.records import NOBODY, PLAIN, Crew, Draft, Offer
from tests.interpreter.rounds import DRAW, Round, Seen


def broken(draft: Draft, rounds: Round, found: dict[State, Seen]) -> list[str]:
    """Every expectation that the play of the second reader does not meet."""
    return [*_first_moves(draft, rounds), *_never(draft, found)]


def _first_moves(draft: Draft, rounds: Round) -> Iterator[str]:
    """At the start exactly those may try what the records say, and what is reached fares as they say."""
    board = Board(rounds.begin)
    tried = [deed for deed in deeds(rounds.sheet, board, everyone=True) if deed.outcome == REACHED]
    did = {offer_of(deed, board) for deed in tried} - draft.later
    may = {offer for offer in draft.offers if at_the_start(draft, offer)} - draft.later
    if rounds.result(rounds.begin) is not None:
        return
    yield from (f"nobody was to try {offer}" for offer in sorted(did - may, key=str))
    yield from (f"nobody tries {offer}" for offer in sorted(may - did, key=str))
    for deed in tried:
        yield from _fares(draft, rounds, deed, board)


def offer_of(deed: Deed, board: Board) -> Offer:
    """A deed in the words of the records."""
    aim = deed.aim
    crew = Crew(deed.side, deed.role)
    if aim.thing is not None:
        thing = board.things[aim.thing]
        return Offer(crew, deed.skill, deed.kind or "", aim.what, thing.kind, thing.owner or NOBODY)
    if aim.hit is not None:
        hit = board.pupils[aim.hit]
        return Offer(crew, deed.skill, deed.kind or "", aim.what, hit.role, hit.side)
    if aim.mate is not None:
        return Offer(crew, deed.skill, deed.kind or "", aim.what, aim.spot.place if aim.spot else "", deed.side)
    assert aim.spot is not None
    return Offer(crew, deed.skill, deed.kind or "", aim.what, aim.spot.place, aim.spot.owner or NOBODY)


def at_the_start(draft: Draft, offer: Offer) -> bool:
    """Whether an offer can be taken up before anything has moved."""
    hand = f"half of {offer.crew.side}" if draft.halved else "court"
    if offer.ball and (offer.ball, hand) not in draft.begin:
        return False
    numbers = dict.fromkeys(draft.crews(), 1)
    for side in draft.sides:
        numbers[Crew(side, PLAIN)] = draft.players - (side in draft.role_sides)
    numbers = {crew: number - draft.waits.get(crew, 0) for crew, number in numbers.items()}
    if numbers[offer.crew] < 1:
        return False
    if offer.aim == "player":
        hit = Crew(offer.owner, offer.kind)
        return numbers[hit] > (1 if hit == offer.crew else 0)
    if offer.aim == "mate":
        if offer.kind:
            return draft.waits_at == offer.kind and any(crew.side == offer.owner for crew in draft.waits)
        return sum(number for crew, number in numbers.items() if crew.side == offer.crew.side) > 1
    return True


def _fares(draft: Draft, rounds: Round, deed: Deed, board: Board) -> Iterator[str]:
    """A thing that is knocked stands, lies or changes its owner as the records say of its owner's."""
    if deed.aim.what != "target" or deed.aim.thing is None or draft.starts_again:
        return
    thing = board.things[deed.aim.thing]
    fate = draft.fates.get((thing.kind, thing.owner or NOBODY))
    if fate is None or thing.kind in draft.guarded:
        return
    for after in rounds.carried_out(deed, board):
        now = after.things[deed.aim.thing]
        want = {"down": (thing.owner, DOWN), "up": (thing.owner, UP), "taken": (deed.side, UP)}[fate.what]
        if (now.owner, now.how) != want:
            yield f"a {thing.kind} of {thing.owner} was to be {fate.what}, knocked by {deed.side}: {now}"


def _never(draft: Draft, found: dict[State, Seen]) -> Iterator[str]:
    """Nobody wins, scores, falls or leaves who cannot by the records; no ball lies where none is to come."""
    for state, seen in found.items():
        if seen.result not in (None, DRAW) and seen.result not in draft.may_win:
            yield f"{seen.result} was never to win"
            return
        for side, points in zip(draft.sides, state.points, strict=True):
            if points and side not in draft.may_score:
                yield f"{side} was never to score"
                return
        for said in (*_things(draft, state), *_pupils(draft, state), *_balls(draft, state)):
            yield said
            return


def _things(draft: Draft, state: State) -> Iterator[str]:
    falls = {key for key, fate in draft.fates.items() if fate.what == "down" or key[0] in draft.guarded}
    moving = any(fate.what == "taken" for fate in draft.fates.values()) or draft.guarded
    for thing in state.things:
        key = (thing.kind, thing.owner or NOBODY)
        if thing.how == DOWN and key not in falls and not moving:
            yield f"a {thing.kind} of {thing.owner} was never to fall"


def _pupils(draft: Draft, state: State) -> Iterator[str]:
    for pupil in state.pupils:
        crew = Crew(pupil.side, pupil.role)
        if pupil.where == IN or pupil.side in draft.may_stop_playing or draft.may_change_sides or crew in draft.waits:
            continue
        fates = {draft.hit.get(crew, "in")}
        if "hit" in draft.guarded:
            fates |= set(draft.hit.values())
        want = {"out": OUT, "queue": draft.queue, "swap": draft.queue, "bench": draft.bench}
        here = pupil.where.place if isinstance(pupil.where, Spot) else pupil.where
        if here not in {want.get(fate) for fate in fates}:
            yield f"{crew} was never to be {pupil.where}"


def _balls(draft: Draft, state: State) -> Iterator[str]:
    for ball in state.balls:
        place, part, owner = ball.spot
        words = f"{'' if part == 'at' else part + ' '}{place}{f' of {owner}' if owner else ''}"
        if words not in draft.lies and place != draft.shut:
            yield f"no ball was to lie {words}"
