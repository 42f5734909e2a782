"""The door of the page: who may ask, how much may be sent, and what a browser may do with the answers."""

from __future__ import annotations

import secrets
from collections.abc import Iterable
from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from grammar.frozen import frozen

MOST_SENT = (16 << 20) + (64 << 10)  # the largest pack and the form around it; a test holds it to the bounds of packs
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
    "cache-control": "no-store",
}
READS = ("GET", "HEAD")
TOKEN = "token"  # the field of every form that changes something


def own_hosts(port: int) -> tuple[str, ...]:
    """The names by which this machine is called from itself."""
    return (f"127.0.0.1:{port}", f"localhost:{port}", f"[::1]:{port}")


@frozen
class Guard:
    """Refuses a Host that is not ours (another site's name may lead here), an Origin that is not ours, a cross-site
    request for anything but the way in, and more than may be sent; and puts the policy on every answer."""

    app: ASGIApp
    hosts: tuple[str, ...]
    most_sent: int = MOST_SENT

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self.app(scope, receive, send)
            return
        request = Request(scope)
        why, status = _refusal(request, self.hosts, self.most_sent)

        async def sending(message: Message) -> None:
            if message["type"] == "http.response.start":
                message["headers"] = with_headers(message.get("headers", ()))
            await send(message)

        if why:
            await PlainTextResponse(why, status)(scope, receive, sending)
            return
        await self.app(scope, _bounded(receive, self.most_sent), sending)


def _refusal(request: Request, hosts: tuple[str, ...], most_sent: int) -> tuple[str, int]:
    if request.headers.get("host", "") not in hosts:
        return "This address does not lead to the page.", 421
    if request.method not in (*READS, "POST"):
        return "Only GET and POST are answered.", 405
    origin = request.headers.get("origin")
    if request.method == "POST" and (origin is None or urlsplit(origin).netloc not in hosts):
        return "This did not come from the page.", 403
    if request.headers.get("sec-fetch-site") == "cross-site" and request.headers.get("sec-fetch-mode") != "navigate":
        return "This did not come from the page.", 403
    length = request.headers.get("content-length", "0")
    if not length.isdigit() or int(length) > most_sent:
        return "That is too large.", 413
    return "", 200


class TooMuchError(Exception):
    """More was sent than was said."""


def _bounded(receive: Receive, most_sent: int) -> Receive:
    """Stops reading after as much as may be sent, whatever the sender said of its length."""
    left = most_sent

    async def bounded() -> Message:
        nonlocal left
        message = await receive()
        left -= len(message.get("body", b""))
        if left < 0:
            raise TooMuchError
        return message

    return bounded


def with_headers(given: Iterable[tuple[bytes, bytes]]) -> list[tuple[bytes, bytes]]:
    """The headers of an answer with ours; a policy of the answer's own stands."""
    own = list(given)
    there = {name.lower() for name, _ in own}
    return own + [(name.encode(), value.encode()) for name, value in HEADERS.items() if name.encode() not in there]


def token_fits(sent: str, token: str) -> bool:
    """Whether a change was asked for on a page of this run."""
    return secrets.compare_digest(sent.encode(), token.encode())
