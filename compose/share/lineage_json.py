"""Lineages and histories to JSON and back."""

from __future__ import annotations

import re
from typing import Any

from compose.modifiers.parents import Lineage, Used
from compose.share.fields import Fields

MOST_NAME_LETTERS = 60
MOST_MODIFIERS = 30
MOST_VALUES = 10
MOST_HISTORY = 200
PARAMETER = re.compile(r"[^\W\d_][^\W_]*")
VALUE = re.compile(r"[0-9]{1,6}(\.[0-9]{1,6})?( [a-z%°]{1,4})?")


def lineage_json(lineage: Lineage) -> dict[str, Any]:
    """A lineage as JSON."""
    return {
        "base": {"name": lineage.base_name, "content": lineage.base_content},
        "modifiers": [
            {"name": used.name, "values": [{"name": name, "value": value} for name, value in used.values]}
            for used in lineage.modifiers
        ],
    }


def lineage_from(fields: Fields, key: str) -> Lineage:
    """The lineage under a key; raises RefusedError."""
    whole = fields.inner(key, ("base", "modifiers"))
    base = whole.inner("base", ("name", "content"))
    content = None if base.values["content"] is None else base.hash("content")
    return Lineage(base.text("name", MOST_NAME_LETTERS, 1), content, whole.listed("modifiers", MOST_MODIFIERS, _used))


def _used(entry: Fields) -> Used:
    used = entry.inner("it", ("name", "values"))
    return Used(used.text("name", MOST_NAME_LETTERS, 1), used.listed("values", MOST_VALUES, _value))


def _value(entry: Fields) -> tuple[str, str]:
    value = entry.inner("it", ("name", "value"))
    name = value.matching("name", PARAMETER, "a name of one word", MOST_NAME_LETTERS)
    return name, value.matching("value", VALUE, "a number with its unit", 20)


def history_from(fields: Fields, key: str) -> tuple[str, ...]:
    """The earlier content hashes under a key, the oldest first; raises RefusedError."""
    return fields.listed(key, MOST_HISTORY, lambda each: each.hash("it"))
