"""Tasks that pass from pupil to pupil: each has one as long as any other, once all have had a turn."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.duties import Duty
from compose.net.net import Net
from compose.telling.sides import subject
from grammar.amounts import minutes, percent
from grammar.core.rotation import Occasion
from grammar.words import count


def duties_told(net: Net) -> Iterator[tuple[str, str, int]]:
    """For each such task a row with the share of the time, and one that says when all have had it: with its indent."""
    for duty in net.duties:
        others = [each for each in net.duties if each.task == duty.task]
        alike = len({(each.holders, each.players) for each in others}) == 1
        if alike and duty is not others[0]:
            continue  # told for all sides at once
        whose = "" if alike else f" of {subject(duty.side)}"
        yield f"is a {duty.task}{whose}, of the time", percent(duty.holders / duty.players), 0
        turns, every = duty.turns, duty.every
        after = count(turns, every.value) if isinstance(every, Occasion) else minutes(turns * every / 60)
        yield "all have had a turn after", after, 4
        if duty.onward:
            yield "and goes on to be", f"a {duty.onward}", 4


def never_passed_on(net: Net, usual_minutes: float) -> Iterator[Duty]:
    """The tasks that stay with the same pupils in at least half of all rounds, since these are over before."""
    for duty in net.duties:
        if not isinstance(duty.every, Occasion) and duty.every / 60 > usual_minutes:
            yield duty
