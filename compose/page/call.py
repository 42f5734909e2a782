"""What a browser asks of a screen, and what a screen answers: values, before anything is HTML."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import count
from typing import Any
from urllib.parse import urlencode

from compose.page.desk import Desk
from compose.page.work.pool import PATIENT, SOON, URGENT
from compose.page.work.question import Question
from compose.telling.wording import Wording
from grammar.frozen import field, frozen

__all__ = ["PATIENT", "SOON", "URGENT", "Call", "Data", "Go", "Reply", "Shown"]


@frozen
class Upload:
    """A file that was sent: its name as the browser says it, and its bytes."""

    name: str
    data: bytes


@frozen
class Call:
    """`query` and `form` hold each name with all of its values; `tab` names the tab of the browser ("" without the
    script); `whole` asks for everything at once, as a browser without scripts does; `number` is larger for each later
    call."""

    desk: Desk
    wording: Wording
    address: str
    parts: Mapping[str, str] = field(factory=dict)
    query: Mapping[str, Sequence[str]] = field(factory=dict)
    form: Mapping[str, Sequence[str]] = field(factory=dict)
    files: Mapping[str, Upload] = field(factory=dict)
    tab: str = ""
    whole: bool = False
    number: int = field(factory=count(1).__next__)

    @property
    def language(self) -> str:
        """The tag that questions carry."""
        return self.wording.language.partition("-")[0]

    def one(self, name: str, otherwise: str = "") -> str:
        """The first value of a name of the form, or else of the address."""
        return next(iter(self.form.get(name, self.query.get(name, ()))), otherwise)

    def every(self, name: str) -> tuple[str, ...]:
        """All values of a name of the address."""
        return tuple(self.query.get(name, ()))

    def ask(self, asks: str, *given: Any, rank: int = URGENT, turn: str | None = None) -> Any:
        """Ask a worker; raises what `Pool.ask` does."""
        turn = self.address if turn is None else turn
        return self.desk.pool.ask(Question(asks, given), self.tab, turn, rank, self.number)


@frozen
class Shown:
    """A page or a part of one: the template and its values."""

    template: str
    values: Mapping[str, Any] = field(factory=dict)
    status: int = 200


@frozen
class Go:
    """Look elsewhere: after a change, so that loading again does not make it again. `language` is kept if given."""

    address: str
    language: str = ""


@frozen
class Data:
    """A file; with a `status` of its own where it is one."""

    data: bytes
    kind: str
    name: str = ""
    headers: Mapping[str, str] = field(factory=dict)
    status: int = 200


Reply = Shown | Go | Data


def address(path: str, **named: str | Sequence[str]) -> str:
    """An address with a query; empty values are left out."""
    pairs = []
    for name, value in named.items():
        pairs += [(name, each) for each in ([value] if isinstance(value, str) else value) if each]
    return f"{path}?{urlencode(pairs)}" if pairs else path
