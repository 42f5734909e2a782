"""A few workers for all tabs: a newer question of a tab puts off the older ones, answers are kept by content.

A question that is withdrawn is asked to stop; a worker that does not, or that takes too long, is ended and
replaced. So the page never waits for what nobody wants to know.
"""

from __future__ import annotations

import multiprocessing
import threading
import time
from collections import OrderedDict, deque
from typing import Any

from attrs import define, field

from compose.page.work.question import GivenUpError, Question, SupersededError
from compose.page.work.worker import serve

WORKERS = 2
LONGEST_S = 60.0  # our choice: no answer is worth a longer wait
GRACE_S = 0.7  # how long a worker may take to stop by itself
KEPT = 400  # how many answers are kept
URGENT, SOON, PATIENT = 0, 1, 2  # the ranks of questions: those that are patient never take the last worker


@define(eq=False)
class Job:
    """A question on its way; whoever asks the same one waits for the same job."""

    question: Question
    rank: int
    askers: set[tuple[str, str]] = field(factory=set)
    done: threading.Event = field(factory=threading.Event)
    outcome: tuple[str, Any] = ("withdrawn", None)
    withdrawn: bool = False


@define(eq=False)
class Pool:
    """Asked from many threads at once."""

    longest_s: float = LONGEST_S
    _change: threading.Condition = field(factory=threading.Condition, init=False)
    _waiting: deque[Job] = field(factory=deque, init=False)
    _running: dict[int, Job] = field(factory=dict, init=False)
    _last: dict[int, Any] = field(factory=dict, init=False)
    _turns: OrderedDict[str, tuple[int, str]] = field(factory=OrderedDict, init=False)
    _kept: OrderedDict[str, Any] = field(factory=OrderedDict, init=False)
    _closed: bool = field(default=False, init=False)
    _threads: list[threading.Thread] = field(factory=list, init=False)

    def start(self) -> None:
        """Start the workers where they do not run yet; nobody waits for them."""
        with self._change:
            if self._closed or self._threads:
                return
            self._threads += [
                threading.Thread(target=self._tend, args=(number,), daemon=True) for number in range(WORKERS)
            ]
        for thread in self._threads:
            thread.start()

    def close(self) -> None:
        """End the workers."""
        with self._change:
            self._closed = True
            for job in (*self._waiting, *self._running.values()):
                self._withdraw(job)
            self._change.notify_all()
        for thread in self._threads:
            thread.join(5)

    @property
    def busy(self) -> int:
        """How many questions are being worked on or wait."""
        with self._change:
            return len(self._waiting) + len(self._running)

    def ask(self, question: Question, tab: str = "", turn: str = "", rank: int = URGENT, number: int = 0) -> Any:
        """The answer. `turn` is what the tab looks at, since the request of this number: questions of its earlier
        turns are withdrawn, and whoever still asks in one of them is late.

        Raises SupersededError where that happens to this one, GivenUpError where there is no answer to be had.
        """
        key, asker = question.key, (tab, turn)
        self.start()
        with self._change:
            if tab:
                self._leave_behind(tab, turn, number)
            if key in self._kept:
                self._kept.move_to_end(key)
                return self._kept[key]
            job = self._job(question, rank)
            job.askers.add(asker)
            self._change.notify_all()
        job.done.wait()
        said, value = job.outcome
        if said == "done":
            return value
        raise SupersededError if said == "withdrawn" else GivenUpError(value)

    def _job(self, question: Question, rank: int) -> Job:
        for job in (*self._waiting, *self._running.values()):
            if job.question == question and not job.withdrawn:
                return job
        job = Job(question, rank)
        self._waiting.append(job)
        return job

    def _leave_behind(self, tab: str, turn: str, number: int) -> None:
        newest, now = self._turns.get(tab, (0, turn))
        if turn != now and number < newest:
            raise SupersededError
        self._turns[tab] = max(number, newest), turn
        self._turns.move_to_end(tab)
        while len(self._turns) > KEPT:
            self._turns.popitem(last=False)
        for job in (*self._waiting, *self._running.values()):
            job.askers -= {asker for asker in job.askers if asker[0] == tab and asker[1] != turn}
            if not job.askers:
                self._withdraw(job)

    def _withdraw(self, job: Job) -> None:
        job.withdrawn = True
        if job in self._waiting:
            self._waiting.remove(job)
            job.done.set()

    def _tend(self, number: int) -> None:
        """One thread for each worker: hands it jobs and looks after it."""
        worker = _Worker()
        while (job := self._next(number)) is not None:
            said, value = worker.answer(job, self.longest_s)
            with self._change:
                del self._running[number]
                if said == "done":
                    self._kept[job.question.key] = value
                    while len(self._kept) > KEPT:
                        self._kept.popitem(last=False)
                job.outcome = (said, value)
                job.done.set()
                self._change.notify_all()
        worker.end()

    def _next(self, number: int) -> Job | None:
        with self._change:
            while not self._closed:
                job = self._most_urgent(number)
                if job is not None:
                    self._waiting.remove(job)
                    self._running[number] = job
                    self._last[number] = job.question.about
                    return job
                self._change.wait()
            return None

    def _most_urgent(self, number: int) -> Job | None:
        """What this worker is to work on next; one worker is kept free of what may wait."""
        patient = sum(job.rank >= PATIENT for job in self._running.values())
        fitting = [job for job in self._waiting if job.rank < PATIENT or patient < WORKERS - 1]
        own = [job for job in fitting if not self._better_with_another(number, job)]
        return min(own, key=lambda job: job.rank, default=None)

    def _better_with_another(self, number: int, job: Job) -> bool:
        """Whether another worker, who has nothing else to do, knows already what the question is about."""
        about = job.question.about
        return self._last.get(number) != about and any(
            last == about and (other not in self._running or self._running[other].question.about == about)
            for other, last in self._last.items()
        )


class _Worker:
    """A process and the line to it."""

    def __init__(self) -> None:
        self._begin()

    def _begin(self) -> None:
        ours = multiprocessing.get_context("spawn")
        self._line, theirs = ours.Pipe()
        self._stop = ours.Event()
        self._process = ours.Process(target=serve, args=(theirs, self._stop), daemon=True)
        self._process.start()
        theirs.close()

    def answer(self, job: Job, longest_s: float) -> tuple[str, Any]:
        """Ask and wait; the worker is replaced where it has to be."""
        self._stop.clear()
        until, stopping = time.monotonic() + longest_s, False
        try:
            self._line.send(job.question)
            while not self._line.poll(0.02):
                late = time.monotonic() > until
                if stopping and late:
                    self._replace()
                    return ("withdrawn", None) if job.withdrawn else ("broken", "It takes too long.")
                if not stopping and (late or job.withdrawn):
                    self._stop.set()
                    stopping, until = True, time.monotonic() + GRACE_S
            said, value, grown = self._line.recv()
        except (EOFError, OSError):
            self._replace()
            return "broken", "The worker broke down."
        if grown:
            self._replace()
        if said == "withdrawn" and not job.withdrawn:
            return "broken", "It takes too long."
        return said, value

    def _replace(self) -> None:
        self.end()
        self._begin()

    def end(self) -> None:
        """End the process at once."""
        self._line.close()
        self._process.kill()
        self._process.join(5)
