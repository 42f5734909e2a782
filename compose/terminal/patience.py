"""Long work on a terminal: progress after a second, and Ctrl-C that stops cleanly with what is known so far."""

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


class Patience:
    """Watches long work: `keep_going` shows how far it is and says no once Ctrl-C was pressed.

    A second Ctrl-C ends the program at once. Progress goes to the error stream, and only to a terminal.
    """

    def __init__(self) -> None:
        self.stopped = False
        self._begun = time.perf_counter()
        self._shown = sys.stderr.isatty()
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
        if self._shown and time.perf_counter() - self._begun > QUIET_SECONDS:
            self._show(what, done, of)
        return not self.stopped

    def _stop(self, number: int, frame: FrameType | None) -> None:
        if self.stopped:
            raise KeyboardInterrupt
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
