"""A page for tests: answers come from this process, and the browser is a client that knows the token."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from attrs import define
from starlette.testclient import TestClient

import library
from compose.page.app import app_for
from compose.page.desk import Desk
from compose.page.work.pool import URGENT, Pool
from compose.page.work.question import Question
from compose.page.work.worker import function_of

BEGIN = next(path for path in library.beginning_paths() if path.stem == "knock-down").read_text(encoding="utf-8")
PORT = 8730
HOME = f"http://127.0.0.1:{PORT}"
ANSWERED: dict[str, Any] = {}


@define(eq=False)
class AtOnce(Pool):
    """A pool without workers. As in one with them, the same question is answered once, whichever test asks it."""

    def ask(self, question: Question, tab: str = "", turn: str = "", rank: int = URGENT, number: int = 0) -> Any:
        if question.key not in ANSWERED:
            ANSWERED[question.key] = function_of(question.asks)(*question.given)
        return ANSWERED[question.key]


def desk_in(folder: Path) -> Desk:
    """A desk whose shelf is in a folder."""
    return Desk(AtOnce(), folder / "shelf", PORT)


def browser(desk: Desk, **headers: str) -> TestClient:
    """A client that comes from the page."""
    return TestClient(app_for(desk), base_url=HOME, headers={"origin": HOME, "accept-language": "en", **headers})


CLASS = {"pupils": "27", "youngest": "9", "oldest": "10", "minutes": "45", "hall": "", "kit-foam ball": "8"}
