"""What the counts of a hall screen say of who has won; where something else may decide, they say nothing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.page.answers.counting import counted_of
from compose.page.answers.hall_values import Deciding
from compose.telling.voice import Voice
from grammar.core.ends import Bell, Most, NoWinner, Won
from grammar.core.guards import Compare, Count, Every, Guard
from grammar.core.values import SideId

LEVEL = {NoWinner.DRAW: "draw", NoWinner.NOBODY: "nobody"}
NOTHING = Deciding("", "", ())


def deciding(voice: Voice) -> Deciding:
    """What they say at the bell, and by which ends. Points that come only when the round is over are in no count."""
    counted = {side: count for side, count in counted_of(voice) if count is not None}
    if voice.play.end_points or len(counted) < len(voice.play.side_ids):
        return NOTHING
    at_bell, level = _at_bell(voice.play.bell, counted)
    sides: dict[Count, SideId] = {count: side for side, count in counted.items()}
    return Deciding(at_bell, level, tuple(_ends(voice, sides)))


def _at_bell(bell: Bell | None, counted: Mapping[SideId, Count]) -> tuple[str, str]:
    first = bell.verdicts[0] if bell is not None else None
    if bell is None or not isinstance(first, Most) or dict(first.counts) != dict(counted):
        return "", ""
    then = bell.verdicts[1] if len(bell.verdicts) > 1 else None
    return "more" if first.more else "fewer", LEVEL.get(then, "") if isinstance(then, NoWinner) else ""


def _ends(voice: Voice, sides: Mapping[Count, SideId]) -> Iterator[tuple[str, str, str, int]]:
    for end in voice.play.ends:
        verdict, asked = end.verdicts[0], _alone(end.guard)
        if isinstance(verdict, Won) and isinstance(asked, Compare) and isinstance(asked.bound, int):
            side = sides.get(asked.count)
            if side is not None:
                yield verdict.side.key, side.key, asked.relation.value, asked.bound


def _alone(guard: Guard) -> Guard:
    """The guard, without an "all of" around it alone."""
    return next(iter(guard.parts)) if isinstance(guard, Every) and len(guard.parts) == 1 else guard
