"""What follows from a sheet alone is worked out once for it, and not anew in each of thousands of states."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

from grammar.sentences.base import Node

Told = TypeVar("Told", bound=Callable[..., Any])


def remembered(function: Told) -> Told:
    """A function of a sheet and of words that are compared, or phrases that are one another or are not."""

    @wraps(function)
    def known(sheet: Any, *asked: Any) -> Any:
        key = (function, *[id(each) if isinstance(each, Node) else each for each in asked])
        found = sheet.known.get(key)
        if found is None:  # kept with the phrases, so that nothing else has their ids
            found = sheet.known[key] = (asked, function(sheet, *asked))
        return found[1]

    return known  # type: ignore[return-value]
