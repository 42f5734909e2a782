"""The workers: who answers what, while they get ready and after many taps."""

from __future__ import annotations

import multiprocessing
import threading
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

import library
from compose.page.answers.values import Asked
from compose.page.kept import USUAL
from compose.page.work.pool import PATIENT, SOON, WORKERS, Job, Pool
from compose.page.work.question import GivenUpError, Question, SupersededError

TAPS = 50  # the benchmark of the page makes 200
MOST_MB = 400
SHEET = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")


def asked(*uses: str) -> Asked:
    return Asked((SHEET,), uses, USUAL, "en")


@pytest.fixture(scope="module")
def pool() -> Iterator[Pool]:
    made = Pool()
    made.start()
    yield made
    made.close()


def test_whoever_answered_one_question_of_a_remix_gets_the_next_one() -> None:
    """Half of the answer is known there; another worker takes it only where that one has something else to do."""
    pool, one, other = Pool(), Question("remixing:quick", ("one",)), Question("remixing:quick", ("other",))
    pool._last = {0: "one", 1: "other"}
    following = Job(Question("remixing:odds", ("one",)), SOON)
    pool._waiting.append(following)
    assert pool._most_urgent(1) is None
    assert pool._most_urgent(0) is following
    pool._running[0] = Job(one, SOON)
    assert pool._most_urgent(1) is None, "it has the answer as soon as it has answered the first"
    pool._running[0] = Job(other, PATIENT)
    assert pool._most_urgent(1) is following


def test_what_is_still_asked_for_an_earlier_screen_does_not_stop_a_later_one(pool: Pool) -> None:
    earlier, later = Question("group:group_of", ("class A",)), Question("group:group_of", ("class B",))
    pool.ask(earlier, "a tab", "the list", number=1)
    pool.ask(later, "a tab", "a game", number=2)
    with pytest.raises(SupersededError):
        pool.ask(Question("group:group_of", ("class C",)), "a tab", "the list", number=1)
    pool.ask(earlier, "a tab", "the list", number=3)


def test_many_taps_leave_nothing_running_and_little_memory(pool: Pool) -> None:
    """Taps of one tab: each asks for the quick answer, and leaves the forecast of the one before."""
    left: list[threading.Thread] = []

    def later(tap: Asked, turn: str) -> None:
        with suppress(SupersededError):
            pool.ask(Question("remixing:odds", (tap,)), "tab", turn, PATIENT)

    for number in range(TAPS):
        tap, turn = asked(f"add balls,n {1 + number % 6}", f"hold limit,time {3 + number % 9}"), f"turn {number}"
        pool.ask(Question("remixing:quick", (tap,)), "tab", turn)
        left.append(threading.Thread(target=later, args=(tap, turn)))
        left[-1].start()
    for thread in left:
        thread.join(60)
    assert not pool.busy
    pids = [each.pid for each in multiprocessing.active_children() if each.pid is not None]
    assert len(pids) == WORKERS
    if Path("/proc/self/smaps_rollup").is_file():
        assert sum(megabytes(pid) for pid in pids) < MOST_MB


def megabytes(pid: int) -> float:
    """What a process holds in memory, of what is shared its part."""
    rows = Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines()
    return next(int(row.split()[1]) for row in rows if row.startswith("Pss:")) / 1024


def test_whoever_asks_first_starts_the_workers_and_nobody_starts_them_twice() -> None:
    made = Pool()
    assert made.ask(Question("group:group_of", (USUAL,))).value is not None
    made.start()
    assert len(made._threads) == WORKERS
    made.close()
    left = Pool()
    left.close()
    left.start()
    assert not left._threads


def test_a_question_that_breaks_is_told(pool: Pool) -> None:
    with pytest.raises(GivenUpError, match="no_such"):
        pool.ask(Question("remixing:no_such"))
