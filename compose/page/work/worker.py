"""A worker process: waits for a question, answers it, and stops early when nobody wants to know any more."""

from __future__ import annotations

import importlib
import signal
import sys
from collections.abc import Iterator
from multiprocessing.connection import Connection
from multiprocessing.synchronize import Event
from pathlib import Path
from typing import Any

from compose.page.work.question import Question, SupersededError

ANSWERS = "compose.page.answers"
TOO_LARGE_MB = 190.0  # our choice: a worker that has grown past this is replaced by a fresh one
_stop: list[Event] = []


def keep_going(what: str, done: int, of: int) -> bool:
    """What long work asks between two steps: no once the question was withdrawn."""
    return not (_stop and _stop[0].is_set())


def raise_if_withdrawn() -> None:
    """For work with no budget of its own: raises SupersededError once the question was withdrawn."""
    if not keep_going("", 0, 0):
        raise SupersededError


def serve(questions: Connection, stop: Event) -> None:
    """Answer until the other end closes. Each answer says whether it worked and whether this process has grown."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C ends the page, and the page its workers
    _stop[:] = [stop]
    left = _warming()
    while True:
        try:
            while not questions.poll(0) and next(left, False):
                pass
            question = questions.recv()
            questions.send((*_answered(question), megabytes() > TOO_LARGE_MB))
        except (EOFError, OSError):
            return


def _answered(question: Question) -> tuple[str, Any]:
    try:
        value = function_of(question.asks)(*question.given)
    except SupersededError:
        return "withdrawn", None
    except MemoryError:
        return "broken", "It needs more memory than there is."
    except Exception as error:  # a bug of ours: told to whoever asked, while the worker goes on
        return "broken", f"{type(error).__name__}: {error}"
    return ("withdrawn", None) if not keep_going("", 0, 0) else ("done", value)


def function_of(asks: str) -> Any:
    """The function that a question names."""
    module, name = asks.split(":")
    return getattr(importlib.import_module(f"{ANSWERS}.{module}"), name)


def _warming() -> Iterator[bool]:
    """Load what the first questions would have to wait for, while nobody asks."""
    for module in ("games", "remixing", "choices", "why"):
        importlib.import_module(f"{ANSWERS}.{module}")
        yield True
    for _piece in function_of("at_hand:warming")():
        yield True


def megabytes() -> float:
    """The memory of this process, as far as the system tells; the most that it ever had, where it tells no more."""
    try:
        import resource
    except ImportError:  # not on Windows
        return 0.0
    pages = Path("/proc/self/statm")
    if pages.is_file():
        return int(pages.read_text().split()[1]) * resource.getpagesize() / (1 << 20)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / (1 << 20 if sys.platform == "darwin" else 1 << 10)
