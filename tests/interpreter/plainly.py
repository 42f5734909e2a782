"""Who has the ball, and what a target is worth: said again in the words of resting lines, fetching lines and rules."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.sentences import attempting, ball, claims, events, finish, play, points, resting, then, time, when
from grammar.sentences.base import Name, Node, Np, Quantity, SideOf, SideSame

CATCHERS_SIDE = ball.RestToSide(SideOf("the", "catcher's"))
COURT = Np("the", None, None, Name("court"))
THROWERS_SIDE = SideOf("the", "thrower's")
BALL = Np("a", None, None, Name("ball"))
ONE = Quantity(1.0, "")
HAVING = (ball.RestToSide, ball.KeptBy, ball.HasBall, ball.CatcherHas, ball.FirstHas, ball.BeginsWith)


class Loose(resting.Rest):
    """Where a ball comes to lie that no other line sends anywhere."""


class More(then.Scores):
    """Points besides those that another line gives for the same."""


def plainly(line: Node) -> Iterator[Node]:
    """What a line says, in plainer lines."""
    match line:
        case ball.CatcherHas():
            for state in ("caught", "passed"):
                yield resting.Rest("a", state, line.ball.name, "goes", CATCHERS_SIDE)
        case ball.FirstHas():
            yield Loose("a", "missed", line.ball, "rests", resting.RestThere("on", COURT))
            anybody, it = Np(None, None, None, Name("players")), Np(None, None, None, line.ball)
            yield resting.Fetch(anybody, "fetch", it, None, COURT)
        case points.TargetPoints():
            for worth in line.worths:
                yield from _scored(worth.what, then.Scores(THROWERS_SIDE, "scores", worth.points, "points"))
        case points.SetPoints():
            standing = claims.Counted(line.what.name, claims.Standing())
            one = claims.Claim(SideSame(), "has", claims.Exactly(ONE), standing)
            last = claims.AnyWay((claims.BothWays((one,)),))
            more = More(THROWERS_SIDE, "scores", line.points, "points")
            yield when.When(events.Knocked(line.what, "is"), last, (more,))
        case when.When():
            yield evolve(line, event=_cut_off(line), consequences=tuple(_sent(each) for each in line.consequences))
            for each in line.consequences:
                if isinstance(each, then.Waits) and isinstance(each.until, Quantity):
                    yield play.ComesBack(evolve(each.where, determiner="the"), each.until)
        case finish.After() if isinstance(last := line.results[-1], finish.NextKnockedWins):
            yield line
            wins = finish.SideWins(THROWERS_SIDE)
            what = Np("a", None, None, last.what)
            yield when.When(events.Knocked(what, "is"), None, (wins,), time.SpanAfter(line.time))
        case _:
            yield line


def _scored(what: Np, scores: then.Scores) -> Iterator[when.When]:
    """What is worth points is knocked, brought somewhere, or a ball goes through it."""
    yield when.When(events.Knocked(what, "is"), None, (scores,))
    yield when.When(events.GoesThrough(BALL, "goes", what), None, (scores,))
    yield when.When(events.Arrives(what), None, (scores,))


def _cut_off(line: when.When) -> events.Event:
    """A pass that is caught by somebody of the other side is intercepted."""
    event, doer = line.event, line.doer
    passed = isinstance(event, events.Caught) and event.where is None and event.what.name.text in ("pass", "passes")
    if not passed or doer is None or (isinstance(doer, Np) and doer.name.text in ("team-mate", "team-mates")):
        return event
    return ball.Intercepted(event.what, "is")  # type: ignore[union-attr]


def _sent(said: when.Consequence) -> when.Consequence:
    if isinstance(said, ball.HasBall):
        return then.MovesTo(said.ball, "goes", ball.RestToSide(said.side))  # type: ignore[arg-type]
    return said


def goes_on(line: Node) -> bool:
    """Whether whoever has the ball goes somewhere with it."""
    if not isinstance(line, attempting.Attempt) or "carry" not in line.skills:
        return False
    return any(isinstance(aim, attempting.AimTo) for aim in line.aims)
