"""JSON from strangers: bounded in depth and in its numbers, no name twice in one object."""

from __future__ import annotations

import json
import re
from typing import Any, NoReturn

from compose.share.refusal import RefusedError, shown

MOST_DEPTH = 8
MOST_DIGITS = 12
_STRINGS = re.compile(r'"(?:[^"\\]|\\.)*"?')
_BRACKETS = re.compile(r"[\[\]{}]")


def strict_json(data: bytes, file: str) -> Any:
    """The value of a JSON text; raises RefusedError for anything that is not plain, small JSON in UTF-8."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        raise RefusedError("P-json", f"{file} is not text in UTF-8.") from None
    if _depth(text) > MOST_DEPTH:
        raise RefusedError("P-json", f"{file} is nested more than {MOST_DEPTH} deep.")

    def refuse(what: str) -> NoReturn:
        raise RefusedError("P-json", f"{file} holds {what}.")

    def whole(digits: str) -> int:
        return int(digits) if len(digits) <= MOST_DIGITS else refuse("a number that is far too large")

    def pairs(found: list[tuple[str, Any]]) -> dict[str, Any]:
        made = dict(found)
        return made if len(made) == len(found) else refuse("the same name twice in one object")

    try:
        return json.loads(
            text,
            parse_int=whole,
            parse_float=lambda digits: refuse(f"the number {shown(digits)}, which is not whole"),
            parse_constant=lambda word: refuse(f"{shown(word)}, which is no number"),
            object_pairs_hook=pairs,
        )
    except json.JSONDecodeError as error:
        raise RefusedError("P-json", f"{file} is not JSON: line {error.lineno}, column {error.colno}.") from None


def _depth(text: str) -> int:
    depth = deepest = 0
    for sign in _BRACKETS.findall(_STRINGS.sub("", text)):
        depth += 1 if sign in "[{" else -1
        deepest = max(deepest, depth)
    return deepest


def json_bytes(value: Any) -> bytes:
    """The one way this folder writes JSON: readable, keys in the order given, one newline at the end."""
    return (json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False) + "\n").encode()
