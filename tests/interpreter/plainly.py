"""Sentences about who has the ball, said again in the words of resting lines, fetching lines and rules."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.sentences import ball, play, when
from grammar.sentences.base import Name, Node, Np, SideOf

CATCHERS_SIDE = ball.RestToSide(SideOf("the", "catcher's"))
COURT = Np("the", None, None, Name("court"))
HAVING = (ball.RestToSide, ball.KeptBy, ball.HasBall, ball.CatcherHas, ball.FirstHas, ball.BeginsWith)


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
        case when.When():
            yield evolve(line, consequences=tuple(_sent(each) for each in line.consequences))
        case _:
            yield line


def _sent(said: when.Consequence) -> when.Consequence:
    if isinstance(said, ball.HasBall):
        return when.MovesTo(said.ball, "goes", ball.RestToSide(said.side))  # type: ignore[arg-type]
    return said
