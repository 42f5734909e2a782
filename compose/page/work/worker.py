"""A worker process: waits for a question, answers it, and stops early when nobody wants to know any more."""

from __future__ import annotations

import importlib
import signal
from multiprocessing.connection import Connection
from multiprocessing.synchronize import Event
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
    _warmed()
    while True:
        try:
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


def _warmed() -> None:
    """Load now what the first question would have to wait for."""
    from compose.page.answers import at_hand, remixing

    at_hand.warm()
    assert remixing


def megabytes() -> float:
    """The memory of this process, as far as the system tells."""
    try:
        import resource
    except ImportError:  # not on Windows
        return 0.0
    import sys

    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / (1 << 20 if sys.platform == "darwin" else 1 << 10)
