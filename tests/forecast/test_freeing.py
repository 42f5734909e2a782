"""Pupils who come back as fast as they are hit: rates worked out by hand."""

from __future__ import annotations

import attrs
import pytest

import library
from compose.forecast.chances.freeing import freed_faster
from compose.net.net import Net
from tests.check.build import ATTEMPT, Builder


def hit_and_freed(hits_a_minute: float, freed_a_minute: float) -> Net:
    """Four are hit one after the other, a teacher frees one after the other; over when nobody is in."""
    play = Builder("north")
    play.place("player/north/-/in", 4, 4, "player", "north")
    play.place("player/north/-/far queue", 0, 4, "player", "north")
    hit, free, over = play.rule("whoever is hit waits"), play.rule("the teacher frees"), play.rule("nobody in loses")
    inside, queue = "player/north/-/in", "player/north/-/far queue"
    throw, help_ = (
        attrs.evolve(ATTEMPT, skill=skill, said_per_minute=often, said_chance=1.0)
        for skill, often in (("roll", hits_a_minute), ("free", freed_a_minute))
    )
    may_hit = {"rate": play.rate(inside), "guard": play.at_least(inside, 1), "outcome": "success"}
    play.may("hit", play.move(inside, queue, hit), attempt=attrs.evolve(throw, aim="player"), **may_hit)
    play.may("freed", play.move(queue, inside, free), guard=play.at_least(queue, 1), forced=True, attempt=help_)
    play.end("all out", None, play.at_most(inside, 0), over)
    return play.net()


def test_as_by_hand() -> None:
    """Two of four wait: two are hit so often each, one is freed so often."""
    [found] = freed_faster(hit_and_freed(1.0, 3.0), library.norms())
    assert (found.side, found.waiting, found.of) == ("north", 2, 4)
    assert (found.sent, found.back) == (pytest.approx(2.0), pytest.approx(3.0))


def test_whoever_is_hit_faster_is_all_out_in_time() -> None:
    assert not list(freed_faster(hit_and_freed(2.0, 3.0), library.norms()))
