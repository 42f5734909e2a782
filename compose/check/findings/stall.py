"""Stall: a side keeps the round from ending by what the rules leave to it.

It may leave undone what nothing makes it do, and choose among what it must do with a ball. Where play can
still end, but not as long as that side does not want it to whatever the others do, it holds the round up (what
an attractor computation for "everybody but this side" leaves over, see `forcing`). States from which no end
can be reached at all are dead ends or loops and are told there.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

import numpy as np

from compose.check.acts import Longs, powers_of
from compose.check.condition import Bools
from compose.check.forcing import can_avoid, can_force
from compose.check.found import FetchedBy, Found, Sides, Value
from compose.check.left_alone import either_left_alone, stuck_alone
from compose.check.liberties import Kind, Liberty, held_up, what_lets
from compose.check.pointing import how_many_like_this
from compose.check.study import Study, once
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.frozen import frozen
from grammar.said import Capital, Chain, Listed, Written, said
from grammar.span import nowhere

CODE = "C-stall"
LUCK = "it takes some luck, or the others' help, to come there"


def stall(study: Study) -> list[Found]:
    """One finding for each side that can hold the round up; mirrored sides share one where the same lets them."""
    found: dict[Hashable, list[Stalling]] = {}
    for side in study.net.sides:
        if hold_out(study, side).any():
            stalling = _stalling(study, side)
            twin = "" if side in study.net.mirrored else side
            alike = (twin, stalling.own_win, *((each.kind, each.rule) for each in stalling.blamed))
            found.setdefault(alike, []).append(stalling)
    return [_finding(study, alike) for alike in found.values()]


@once
def hold_out(study: Study, side: str) -> Bools:
    """The states in which play can still end, but not unless this side wants it to."""
    if len(study.net.sides) < 2 or not study.ended.any():
        return np.zeros(study.space.states, dtype=np.bool_)
    return held_up(study, powers_of(study.net, side))


@frozen(eq=False)
class Stalling:
    """One side that holds the round up: where, where it wins by it at the bell, how it comes there, what lets it.

    `own_win`: wherever it may, it could win instead, whatever the others do, so that it only puts off its own win.
    """

    side: str
    held: Bools
    profits: Longs
    how: str
    blamed: tuple[Liberty, ...]
    own_win: bool


def _stalling(study: Study, side: str) -> Stalling:
    held = hold_out(study, side)
    won = study.won(side) & study.ended
    own_win = bool(won.any() and can_force(study, powers_of(study.net, side), won)[held].all())
    how = "it is so from the start"
    if not held[0]:
        forced = can_force(study, powers_of(study.net, side), held)[0]
        how = "it can bring that about, whatever the others do" if forced else LUCK
    return Stalling(side, held, _profits(study, side), how, what_lets(study, side), own_win)


def _finding(study: Study, alike: list[Stalling]) -> Found:
    first = alike[0]
    gaining = [each for each in alike if each.profits.size]
    shown = gaining[0] if gaining else first
    state = int((shown.profits if gaining else shown.held.nonzero()[0])[0])
    clock = " before the bell" if study.net.bell is not None else ""
    gain = " and win by it at the bell" if len(gaining) == len(alike) else ""
    told = [each.rule.span for each in first.blamed if each.rule]
    sides = Sides(first.side, tuple(each.side for each in alike[1:]))
    putting_off = said("There {side} would win by playing on, whatever the others do: nobody gains by it.", side=sides)
    only = said("Only {sides} can win by it at the bell.", sides=Listed(tuple(Sides(each.side) for each in gaining)))
    return Found(
        code=CODE,
        severity=Severity.NOTE if study.net.bell is not None or first.own_win else Severity.WARNING,
        title=said(
            "{side} can keep the round from ending{clock}{gain}, just by {how}.",
            side=sides,
            clock=clock,
            gain=gain,
            how=_by(first.blamed),
        ),
        place=told[0] if told else nowhere(),
        hint=Chain(
            (
                *_hows(alike),
                how_many_like_this(int(first.held.sum()), study.space.states),
                *((only,) if gaining and not gain else ()),
                *((putting_off,) if first.own_win else mends(study, sides, first.blamed, bool(gaining))),
            )
        ),
        others=tuple(dict.fromkeys(told[1:])),
        witness=line_of_play(study.space, state),
        numbers=(
            ("situations", float(first.held.sum())),
            ("of them ahead at the bell for good", float(first.profits.size)),
        ),
        when_alone=all(_over_once_alone(study, each.side) for each in alike),
    )


def _profits(study: Study, side: str) -> Longs:
    """Where it holds the round up and stays ahead until the bell, whenever that rings and whatever comes."""
    lead = hold_out(study, side) & study.ahead(side)
    if not lead.any():
        return np.flatnonzero(lead)
    return np.flatnonzero(lead & can_avoid(study, powers_of(study.net, side), study.ended | ~study.ahead(side)))


def _over_once_alone(study: Study, side: str) -> bool:
    """Whether it could not hold the round up, if that ended where play gets stuck because a side is left alone."""
    if not stuck_alone(study):
        return False
    over = study.ended | either_left_alone(study)
    return not (hold_out(study, side) & can_avoid(study, powers_of(study.net, side), over)).any()


def _hows(alike: list[Stalling]) -> Iterator[Value]:
    """How each comes there, said once where it is the same for all."""
    if len({each.how for each in alike}) == 1:
        yield Capital(said("{how}.", how=alike[0].how))
        return
    yield from (said("For {side}: {how}.", side=Sides(each.side), how=each.how) for each in alike)


def _by(blamed: tuple[Liberty, ...]) -> str:
    if any(each.kind is not Kind.CHOOSE for each in blamed):
        return "not playing on"
    return "choosing what to do with the ball"


def mends(study: Study, sides: Sides, blamed: tuple[Liberty, ...], gains: bool) -> tuple[Value, ...]:
    """For each liberty what it lets the sides do, and what takes it from them."""
    return tuple(_what_lets_and_mends(study, sides, each, gains) for each in blamed)


def _what_lets_and_mends(study: Study, sides: Sides, liberty: Liberty, gains: bool) -> Value:
    """What the side may do or leave undone, and what takes that from it."""
    act = liberty.rule or "what it does"
    if liberty.kind is Kind.HOLD:
        kinds = dict.fromkeys(str(study.net.places[place].kind or "ball") for place in liberty.balls) or ("ball",)
        limits = Listed(tuple(Written(f'"a {kind} is held at most 10 s"') for kind in kinds))
        why = "Nothing makes {side} play a ball that they have. Give a hold limit: {limits}."
        return said(why, side=sides, limits=limits)
    if liberty.kind is Kind.CHOOSE:
        return said(
            "With the ball {side} may do nothing but this, over and over: {act}. "
            'Leave that line out, or say when it may be done ("..., only when ...").',
            side=sides,
            act=act,
        )
    if liberty.kind is Kind.FETCH:
        others = Listed(tuple(said('"{line}"', line=FetchedBy(study.net.places[place])) for place in liberty.balls))
        return said(
            "Nothing makes {side} fetch: {act} only says that they may. Let others fetch as well: {others}.",
            side=sides,
            act=act,
            others=others,
        )
    if study.net.bell is not None and not gains:
        why = "Nothing makes {side} do this: {act}. The clock ends the round all the same, and that alone wins nothing."
        return said(why, side=sides, act=act)
    if study.net.bell is None:
        why = 'Nothing makes {side} do this: {act}. Add a clock ("after 6 min: ..."), or let others do it as well.'
        return said(why, side=sides, act=act)
    return said(
        "Nothing makes {side} do this: {act}. Let others do it as well, or let the round go on without it.",
        side=sides,
        act=act,
    )
