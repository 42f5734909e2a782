"""Scoring on several cores: each set is scored by itself, so that it does not matter which core does it."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager

from compose.fit.suggest.score import Scored, Scorer, Uses

MOST_CORES = 4  # our choice: each takes its own memory
Scoring = Callable[[Sequence[Uses]], list[Scored | None]]
_forked_with: list[Scorer] = []  # in a process that was forked off: what it was forked off with


def one_by_one(scorer: Scorer) -> Scoring:
    """Scoring in this process alone."""
    return lambda sets: [scorer(uses) for uses in sets]


@contextmanager
def on_cores(scorer: Scorer, cores: int | None = None) -> Iterator[Scoring]:
    """Scoring on so many cores (all that there are, but no more than a few), or on one where processes cannot be
    forked off safely: only a process of a single thread can."""
    wanted = min(cores or os.cpu_count() or 1, MOST_CORES)
    if wanted < 2 or "fork" not in multiprocessing.get_all_start_methods() or threading.active_count() > 1:
        yield one_by_one(scorer)
        return
    alone = one_by_one(scorer)
    pool = ProcessPoolExecutor(wanted, multiprocessing.get_context("fork"), _begin, (scorer,))

    def score(sets: Sequence[Uses]) -> list[Scored | None]:
        if len(sets) < 2:
            return alone(sets)
        try:
            return list(pool.map(_score, sets))
        except BrokenProcessPool:  # one was ended from outside: what it had to do is done here
            return alone(sets)

    try:
        yield score
    except BaseException:
        pool.shutdown(wait=False, cancel_futures=True)
        raise
    pool.shutdown()  # at rest by now; left to the end of the program, it may write where nothing is open any more


def _begin(scorer: Scorer) -> None:
    _forked_with[:] = [scorer]
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the process that waits for the answers decides


def _score(uses: Uses) -> Scored | None:
    (scorer,) = _forked_with
    return scorer(uses)
