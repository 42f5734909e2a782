"""The rim of this folder: what is refused inside, by us, by the disk or by the index, goes out as a finding."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from functools import wraps
from pathlib import Path
from typing import Concatenate, ParamSpec, Protocol, TypeVar

from compose.share.refusal import RefusedError
from compose.share.whole_files import trouble
from grammar.finding import Outcome


class InFolder(Protocol):
    """Anything that works in one folder."""

    @property
    def folder(self) -> Path: ...


Owner = TypeVar("Owner", bound=InFolder)
Value = TypeVar("Value")
Given = ParamSpec("Given")


def told(
    method: Callable[Concatenate[Owner, Given], Value],
) -> Callable[Concatenate[Owner, Given], Outcome[Value]]:
    """A method that gives an Outcome instead of raising."""

    @wraps(method)
    def telling(owner: Owner, /, *args: Given.args, **named: Given.kwargs) -> Outcome[Value]:
        return outcome_of(owner.folder, lambda: method(owner, *args, **named))

    return telling


def outcome_of(folder: Path, work: Callable[[], Value]) -> Outcome[Value]:
    """What some work in a folder gives, or why it was refused."""
    try:
        return Outcome(work())
    except RefusedError as refusal:
        return Outcome(None, (refusal.finding(str(folder)),))
    except (OSError, sqlite3.Error) as error:
        return Outcome(None, (trouble(error, folder).finding(str(folder)),))
