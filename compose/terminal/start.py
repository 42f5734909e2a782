"""The door of the program: it loads nothing large before Ctrl-C is heard and both streams are safe to write to."""

from __future__ import annotations

import _thread
import gc
import os
import signal
import sys
import threading
from types import FrameType
from typing import NoReturn

from compose.terminal.patience import INTERRUPTED, StoppedError
from compose.terminal.streams import KeptOpen

_WRONG = 2
_AGAIN_S = 0.02


def main() -> NoReturn:
    """Run the command that was asked for, and end with its exit code: never with a traceback."""
    signal.signal(signal.SIGINT, _stop)
    # NumPy's algebra would start a thread for each core, a tenth of a short command (measured), and ours is sparse.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    sys.stdout = said = KeptOpen(sys.stdout)
    sys.stderr = KeptOpen(sys.stderr)
    code = _WRONG
    try:
        code = _run()
        said.flush()
    except StoppedError:
        code = INTERRUPTED
        print("Stopped.", file=sys.stderr)
    if said.unwritten is not None and code != INTERRUPTED:
        code = _WRONG
        print(f"The answer could not be written: {said.unwritten.strerror}.", file=sys.stderr)
    sys.stderr.flush()
    gc.freeze()  # Python would look through all that is left once more as it ends: a twentieth of a command (measured)
    sys.exit(code)


def _run() -> int:
    try:
        from compose.terminal.main import run  # the commands, and all that they are made of

        return run(sys.argv[1:])
    except OSError as error:
        what = f"`{error.filename}`" if error.filename else "Something that is needed here"
        print(f"{what} cannot be read or written: {(error.strerror or str(error)).lower()}.", file=sys.stderr)
    except Exception as error:
        if os.environ.get("RULEWEAVE_TRACE"):
            raise
        print(f"Ruleweave has a fault here ({type(error).__name__}: {error}); nothing was written.", file=sys.stderr)
        print("Please tell whoever gave it to you; RULEWEAVE_TRACE=1 shows where it is.", file=sys.stderr)
    return _WRONG


def _stop(number: int, frame: FrameType | None) -> None:
    """Stop, but not while a module is being loaded: NumPy takes whatever is raised then for a library that is missing,
    and Python drops what is raised as it lets go of a module's lock."""
    if _loads(frame):
        later = threading.Timer(_AGAIN_S, _thread.interrupt_main)
        later.daemon = True
        later.start()
        return
    raise StoppedError


def _loads(frame: FrameType | None) -> bool:
    while frame is not None and not frame.f_code.co_filename.startswith("<frozen importlib"):
        frame = frame.f_back
    return frame is not None
