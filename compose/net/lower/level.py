"""The end of the clock where a level score is played on: whoever leads has won, then or by the next point."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, by_itself
from compose.net.lower.services import act
from compose.net.lower.tokens import points_place
from compose.net.net import All, Assign, Comparison, Condition, Effect, Not, Rate, Rule, Transition
from compose.net.told import TimeOver
from grammar.core.ends import NextKnocked
from grammar.core.rules import Add


def time_is_over(builder: Builder, clock: int, passed: int) -> Iterator[Transition]:
    """The clock is over. A score that is level as high as points are counted goes on from nothing, so that the next
    point can be seen."""
    bell = builder.play.bell
    assert bell is not None
    rule = builder.rule(bell.lines)
    if isinstance(bell.verdicts[-1], NextKnocked):  # no point counts any more
        yield _over(builder, clock, passed, All(()), (), rule)
        return
    points = [points_place(builder, side) for side in builder.play.side_ids]
    most = max(
        (each.points for one in builder.play.rules for each in one.effects if isinstance(each, Add)), default=0
    ) * max((each.times for each in builder.play.counting), default=1)
    high = All(tuple(Comparison(((1, place),), ">=", builder.places[place].capacity - most + 1) for place in points))
    level = All(tuple(Comparison(((1, points[0]), (-1, other)), "==", 0) for other in points[1:]))
    both = All((*high.parts, *level.parts))
    anew: tuple[Effect, ...] = tuple(Assign(place, 0, rule) for place in points)
    for guard, effects in ((both, anew), (Not(both), ())):
        yield _over(builder, clock, passed, guard, effects, rule)


def _over(
    builder: Builder, clock: int, passed: int, guard: Condition, effects: tuple[Effect, ...], rule: Rule
) -> Transition:
    bell = builder.play.bell
    assert bell is not None
    return Transition(
        TimeOver(),
        None,
        True,
        act(builder, "wait", bell.lines, None),
        "always",
        Rate(),
        All((Comparison(((1, clock),), "==", passed), guard)),
        (Assign(clock, passed + 1, by_itself(rule.span)), *effects),
        (rule,),
        ticks=True,
    )
