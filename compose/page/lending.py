"""The hall screen for other devices in the room: on purpose only, for a while, with a code that the teacher shows.

What is lent is one document and the place where its rounds are sent. Nothing else of the page can be reached
there: it is a server of its own.
"""

from __future__ import annotations

import secrets
import socket
import threading
import time
from collections.abc import Callable, Mapping

import uvicorn
from attrs import define, field
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from compose.page.guard import Guard
from grammar.frozen import frozen

LONGEST_S = 90 * 60.0  # our choice: a double lesson
MOST_WRONG = 20  # guesses before the door is shut for good
LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"  # none that are taken for others
LENGTH = 6
MOST_SENT = 20_000
Keep = Callable[[Mapping[str, object]], str]


@frozen
class Lent:
    """What is lent: where, with which code, until when (seconds of the clock that only goes forward)."""

    address: str
    code: str
    until_s: float

    @property
    def minutes_left(self) -> int:
        """Whole minutes, rounded up."""
        return max(0, int((self.until_s - time.monotonic()) / 60) + 1)


@frozen
class Loan:
    """What a borrower gets: the door's HTML, and the document for a code, with its policy; `keep` takes a round."""

    door: Callable[[bool], str]
    document: Callable[[str], str]
    policy: str
    keep: Keep


@define(eq=False)
class Lender:
    """At most one loan at a time."""

    lent: Lent | None = None
    _server: uvicorn.Server | None = field(default=None, init=False)
    _wrong: int = field(default=0, init=False)

    def start(self, loan: Loan, longest_s: float = LONGEST_S) -> Lent:
        """Open the door; raises OSError where this machine is in no network."""
        self.stop()
        host = own_address()
        door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        door.bind((host, 0))
        door.listen(32)
        named = f"{host}:{door.getsockname()[1]}"
        code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        self.lent, self._wrong = Lent(f"http://{named}/", code, time.monotonic() + longest_s), 0
        config = uvicorn.Config(
            self.app(loan, named), log_level="error", access_log=False, lifespan="off", timeout_graceful_shutdown=1
        )
        self._server = server = uvicorn.Server(config)
        threading.Thread(target=server.run, kwargs={"sockets": [door]}, daemon=True).start()
        timer = threading.Timer(longest_s, self._ended, (server,))
        timer.daemon = True
        timer.start()
        return self.lent

    def stop(self) -> None:
        """Shut the door."""
        if self._server is not None:
            self._server.should_exit = True
        self._server, self.lent = None, None

    def _ended(self, server: uvicorn.Server) -> None:
        if self._server is server:
            self.stop()

    def fits(self, code: str) -> bool:
        """Whether a code opens the door; too many wrong ones shut it."""
        lent = self.lent
        if lent is None or time.monotonic() > lent.until_s:
            self.stop()
            return False
        if secrets.compare_digest(code.strip().upper().encode(), lent.code.encode()):
            return True
        self._wrong += 1
        if self._wrong >= MOST_WRONG:
            self.stop()
        return False

    def app(self, loan: Loan, named: str) -> Guard:
        """The door, the document behind it, and the place for rounds."""

        def page(text: str, status: int = 200) -> Response:
            return Response(text, status, {"content-security-policy": loan.policy}, "text/html")

        async def knock(request: Request) -> Response:
            return page(loan.door(False))

        async def enter(request: Request) -> Response:
            code = str((await request.form(max_files=0, max_fields=4)).get("code", ""))
            return page(loan.document(code.strip().upper())) if self.fits(code) else page(loan.door(True), 403)

        async def keep(request: Request) -> Response:
            form = await request.form(max_files=0, max_fields=40)
            if not self.fits(str(form.get("code", ""))):
                return Response("", 403)
            told: dict[str, object] = {name: str(form.get(name, "")) for name in form}
            told["uses"] = [str(each) for each in form.getlist("with")]
            wrong = await run_in_threadpool(loan.keep, told)
            return Response(wrong, 422 if wrong else 204)

        routes = [
            Route("/", knock),
            Route("/", enter, methods=["POST"]),
            Route("/rounds", keep, methods=["POST"]),
        ]
        return Guard(Starlette(routes=routes), (named,), MOST_SENT)


def own_address() -> str:
    """The address of this machine in its network; nothing is sent to find it out."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as finder:
        finder.connect(("192.0.2.1", 9))  # an address for documentation (RFC 5737): nobody is there
        return str(finder.getsockname()[0])
