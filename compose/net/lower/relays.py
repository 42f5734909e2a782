"""How often the players of a side have run, as far as that is asked for."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, by_itself
from compose.net.net import Place, Shift
from compose.net.outcome import Moment
from grammar.core.guards import Compare, Guard, OfEach, TimesRun
from grammar.core.play import Offer
from grammar.core.rules import Result
from grammar.core.schedule import guards_of
from grammar.core.values import SideId, Skill


def runs_place(builder: Builder, side: SideId) -> int:
    """The count of the runs of a side, as far as a line asks for them."""
    most = max(_asked(builder, side), default=0)
    return builder.add_place(("runs", side), Place(f"runs/{side.key}", "runs", most, 0, side.key))


def runs_counted(builder: Builder, moment: Moment, offer: Offer) -> Iterator[Shift]:
    """One run more of the side of whoever is back."""
    side = moment.by.side
    if moment.result is Result.ARRIVED and moment.skill is Skill.RUN and any(_asked(builder, side)):
        yield Shift(runs_place(builder, side), 1, by_itself(builder.core.lines[offer.lines[0]].span))


def _asked(builder: Builder, side: SideId) -> Iterator[int]:
    """All numbers of runs of a side that lines ask for."""
    for guard, _ in guards_of(builder.play):
        for each in _compared(guard):
            if each.count == TimesRun(side):
                bound = each.bound
                assert isinstance(bound, int | OfEach)
                yield bound if isinstance(bound, int) else bound.times * max(builder.players.values())


def _compared(guard: Guard) -> Iterator[Compare]:
    if isinstance(guard, Compare):
        yield guard
    for part in getattr(guard, "parts", ()):
        yield from _compared(part)
