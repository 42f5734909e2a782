"""Serve the page on this machine until somebody stops it."""

from __future__ import annotations

import os
import socket
import threading
import webbrowser
from collections.abc import Callable
from functools import partial
from pathlib import Path

import uvicorn

from compose.page.app import app_for
from compose.page.desk import Desk
from compose.page.screens import load_all
from compose.page.work.pool import Pool

USUAL_PORT = 8730
HOME = "127.0.0.1"
WORK_AFTER_S, WARM_AFTER_S = 0.8, 1.5  # the first page comes first: workers that load beside it would slow it down


def serve(shelf: Path, port: int | None, open_browser: bool, tell: Callable[[str], None]) -> None:
    """Serve until the program is stopped; `tell` hears the address once it can be opened.

    Without a port the usual one is taken, or any other that is free. Raises OSError where the named one is not.
    """
    door = _door(port)
    desk = Desk(Pool(), shelf, door.getsockname()[1])
    server = _Server(
        uvicorn.Config(app_for(desk), log_level="error", access_log=False, lifespan="off", timeout_graceful_shutdown=2)
    )
    server.closes = desk.close
    address = f"http://{HOME}:{desk.port}/"
    for seconds, then in ((WORK_AFTER_S, desk.pool.start), (WARM_AFTER_S, partial(_warm, desk))):
        later = threading.Timer(seconds, then)
        later.daemon = True
        later.start()
    tell(address)  # the door is open already: whoever knocks before the server is up waits for it
    if open_browser:
        threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
    try:
        server.run(sockets=[door])
    finally:
        desk.close()


def _warm(desk: Desk) -> None:
    """Load and read now what somebody would have to wait for later."""
    load_all()
    desk.sheets()


class _Server(uvicorn.Server):
    """Ends the workers before it hands on the signal that ended it: that may end the process at once."""

    closes: Callable[[], None]

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        self.closes()  # first, so that nobody waits for an answer
        await super().shutdown(sockets)


def _door(port: int | None) -> socket.socket:
    """A socket that listens on this machine only."""
    for wanted in (USUAL_PORT, 0) if port is None else (port,):
        door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name == "posix":  # elsewhere the same word lets two programs share a port
            door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            door.bind((HOME, wanted))
        except OSError:
            door.close()
            if wanted == 0 or port is not None:
                raise
            continue
        door.listen(128)
        return door
    raise OSError("no port is free")
