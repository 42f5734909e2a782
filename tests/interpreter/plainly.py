"""Who has the ball, and what a target is worth: said again in the words of resting lines, fetching lines and rules."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.sentences import ball, finish, play, points, when
from grammar.sentences.base import Name, Node, Np, Quantity, SideOf, SideSame

CATCHERS_SIDE = ball.RestToSide(SideOf("the", "catcher's"))
COURT = Np("the", None, None, Name("court"))
THROWERS_SIDE = SideOf("the", "thrower's")
BALL = Np("a", None, None, Name("ball"))
ONE = Quantity(1.0, "")
HAVING = (ball.RestToSide, ball.KeptBy, ball.HasBall, ball.CatcherHas, ball.FirstHas, ball.BeginsWith)


class More(when.Scores):
    """Points besides those that another line gives for the same."""


def plainly(line: Node) -> Iterator[Node]:
    """What a line says, in plainer lines."""
    match line:
        case ball.CatcherHas():
            for state in ("caught", "passed"):
                yield play.Rest("a", state, line.ball.name, "goes", CATCHERS_SIDE)
        case ball.FirstHas():
            yield play.Rest("a", "missed", line.ball, "rests", play.RestThere("on", COURT))
            anybody, it = Np(None, None, None, Name("players")), Np(None, None, None, line.ball)
            yield play.Fetch(anybody, "fetch", it, None, COURT)
        case points.TargetPoints():
            for worth in line.worths:
                yield from _scored(worth.what, when.Scores(THROWERS_SIDE, "scores", worth.points, "points"))
        case points.SetPoints():
            standing = finish.Counted(line.what.name, finish.Standing())
            one = finish.Claim(SideSame(), "has", finish.Exactly(ONE), standing)
            last = finish.AnyWay((finish.BothWays((one,)),))
            more = More(THROWERS_SIDE, "scores", line.points, "points")
            yield when.When(when.Knocked(line.what, "is"), last, (more,))
        case when.When():
            yield evolve(line, consequences=tuple(_sent(each) for each in line.consequences))
        case _:
            yield line


def _scored(what: Np, scores: when.Scores) -> Iterator[when.When]:
    """What is worth points is knocked, or a ball goes through it."""
    yield when.When(when.Knocked(what, "is"), None, (scores,))
    yield when.When(when.GoesThrough(BALL, "goes", what), None, (scores,))


def _sent(said: when.Consequence) -> when.Consequence:
    if isinstance(said, ball.HasBall):
        return when.MovesTo(said.ball, "goes", ball.RestToSide(said.side))  # type: ignore[arg-type]
    return said
