"""The screens put together: from a request to a call, from a reply to a response."""

from __future__ import annotations

import mimetypes
from collections.abc import Awaitable, Callable, Mapping
from pathlib import Path

from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.exceptions import HTTPException
from starlette.formparsers import MultiPartException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from compose.page.call import Call, Data, Go, Reply, Shown, Upload
from compose.page.desk import Desk
from compose.page.guard import TOKEN, Guard, TooMuchError, own_hosts, token_fits
from compose.page.look import html_of
from compose.page.screens import SCREENS, screen_of
from compose.page.wording import page_wording
from compose.page.work.question import GivenUpError, SupersededError
from compose.telling.wording import languages

STATIC = Path(__file__).parent / "static"
LANGUAGE = "language"  # the cookie
MOST_FIELDS = 400
# Said here, for on Windows another program may have said otherwise, and a browser runs no script of another kind.
KINDS = {".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml"}
NOBODY_WAITS = 499  # what some servers answer when the browser has gone; nobody reads it


def app_for(desk: Desk, hosts: tuple[str, ...] = ()) -> Guard:
    """The whole page behind its guard."""
    for ending, kind in KINDS.items():
        mimetypes.add_type(kind, ending)
    routes: list[Route | Mount] = [
        Route(path, _endpoint(desk, named, method), methods=[method]) for path, method, named in SCREENS
    ]
    routes.append(Mount("/static", StaticFiles(directory=STATIC)))
    inner = Starlette(routes=routes, exception_handlers={404: _nothing_here(desk), TooMuchError: _too_much})
    return Guard(inner, hosts or own_hosts(desk.port))


def _endpoint(desk: Desk, named: str, method: str) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        form = await _form(request) if method == "POST" else FormData()
        call = await _call(desk, request, form)
        if method == "POST" and not token_fits(call.one(TOKEN), desk.token):
            return _response(call, Shown("old-page.html", {"form": _again(form), "path": request.url.path}, 409))
        return await run_in_threadpool(_answered, named, call)

    return endpoint


def _answered(named: str, call: Call) -> Response:
    try:
        return _response(call, screen_of(named)(call))
    except SupersededError:
        return Response(status_code=NOBODY_WAITS)
    except GivenUpError as given_up:
        return _response(call, Shown("trouble.html", {"why": str(given_up)}, 503))


async def _form(request: Request) -> FormData:
    try:
        return await request.form(max_files=4, max_fields=MOST_FIELDS)
    except MultiPartException as wrong:
        raise HTTPException(400, "This form cannot be read.") from wrong


async def _call(desk: Desk, request: Request, form: FormData) -> Call:
    fields: dict[str, list[str]] = {}
    files: dict[str, Upload] = {}
    for name, value in form.multi_items():
        if isinstance(value, UploadFile):
            files[name] = Upload(value.filename or "", await value.read())
        else:
            fields.setdefault(name, []).append(value)
    query = {name: request.query_params.getlist(name) for name in request.query_params}
    address = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    return Call(
        desk,
        page_wording(language_of(request)),
        address,
        request.path_params,
        query,
        fields,
        files,
        tab=request.headers.get("x-tab", "")[:40],
        whole="whole" in query,
    )


def language_of(request: Request) -> str:
    """The language that was chosen, else the first of the browser's that there is."""
    chosen = request.cookies.get(LANGUAGE, "")
    wanted = [each.split(";")[0].strip()[:2] for each in request.headers.get("accept-language", "").lower().split(",")]
    return next((each for each in (chosen, *wanted) if each in languages()), "en")


def _again(form: FormData) -> list[tuple[str, str]]:
    """What was sent, so that nothing typed is lost to a page that has grown old."""
    return [(name, value) for name, value in form.multi_items() if isinstance(value, str) and name != TOKEN]


def _response(call: Call, reply: Reply) -> Response:
    match reply:
        case Go():
            gone = RedirectResponse(reply.address, 303)
            if reply.language:
                gone.set_cookie(LANGUAGE, reply.language, max_age=400 * 86400, httponly=True, samesite="strict")
            return gone
        case Data():
            headers: Mapping[str, str] = dict(reply.headers)
            if reply.name:
                headers = {**headers, "content-disposition": f'attachment; filename="{reply.name}"'}
            return Response(reply.data, reply.status, headers, reply.kind)
        case Shown():
            return Response(html_of(call, reply), reply.status, media_type="text/html")


def _nothing_here(desk: Desk) -> Callable[[Request, Exception], Awaitable[Response]]:
    async def answer(request: Request, error: Exception) -> Response:
        call = await _call(desk, request, FormData())
        return _response(call, Shown("trouble.html", {"why": call.wording.say("There is no such page.")}, 404))

    return answer


async def _too_much(request: Request, error: Exception) -> Response:
    return Response("That is too large.", 413)
