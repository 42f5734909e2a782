"""Long work on a terminal: progress after a second, and what stops it cleanly with what is known so far: Ctrl-C,
or the seconds that somebody asked for. Nobody who names no seconds gets another answer on a busy machine."""

from __future__ import annotations

import signal
import sys
import threading
import time
from types import FrameType, TracebackType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID

QUIET_SECONDS = 1.0
INTERRUPTED = 130  # the exit code of a program stopped from the keyboard, by the custom of shells


class StoppedError(BaseException):
    """Ctrl-C: the command line's own library takes the usual exception for its own end, and says nothing."""


class Patience:
    """Watches long work: `keep_going` shows how far it is and says no once Ctrl-C was pressed or the time is up.

    `stopped` and `late` tell which. A second Ctrl-C ends the program at once. Progress goes to the error stream, and
    only to a terminal.
    """

    def __init__(self, seconds: float | None = None, shown: bool = True) -> None:
        self.stopped = False
        self.late = False
        self._seconds = seconds
        self._begun = time.perf_counter()
        self._shown = shown and sys.stderr.isatty()
        self._progress: Progress | None = None
        self._tasks: dict[str, TaskID] = {}
        self._before: Any = None

    def __enter__(self) -> Patience:
        if threading.current_thread() is threading.main_thread():
            self._before = signal.signal(signal.SIGINT, self._stop)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, where: TracebackType | None
    ) -> None:
        if self._before is not None:
            signal.signal(signal.SIGINT, self._before)
        self.rest()

    def rest(self) -> None:
        """Take the progress off the terminal, so that something can be printed; it comes back by itself."""
        if self._progress is not None:
            self._progress.stop()
        self._progress, self._tasks = None, {}

    def keep_going(self, what: str, done: int, of: int) -> bool:
        """Show how far the work is (`of` 0: nobody knows of how much); False once it is to stop."""
        spent = time.perf_counter() - self._begun
        if self._shown and spent > QUIET_SECONDS:
            self._show(what, done, of)
        self.late = self.late or (self._seconds is not None and spent > self._seconds)
        return not self.stopped and not self.late

    @property
    def broken_off(self) -> str | None:
        """Why the work was not done to its end, as a sentence; None where nothing stopped it."""
        if self.stopped:
            return "Stopped: what is said here is what was known by then."
        if self.late:
            return f"Stopped after {self._seconds:g} s (--seconds): what is said here is what was known by then."
        return None

    def _stop(self, number: int, frame: FrameType | None) -> None:
        if self.stopped:
            raise StoppedError
        self.stopped = True

    def _show(self, what: str, done: int, of: int) -> None:
        if self._progress is None:
            # Loaded only here: quick commands never need it.
            from rich.console import Console
            from rich.progress import Progress, SpinnerColumn, TextColumn, TimeElapsedColumn

            columns = (SpinnerColumn(), TextColumn("{task.description}"), TimeElapsedColumn())
            self._progress = Progress(*columns, console=Console(stderr=True), transient=True)
            self._progress.start()
        told = f"{done:,} {what}" if not of else f"{done:,} of {of:,} {what}"
        if what not in self._tasks:
            self._tasks[what] = self._progress.add_task(told, total=None)
        self._progress.update(self._tasks[what], description=told)
