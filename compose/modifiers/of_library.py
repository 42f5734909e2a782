"""The modifiers of the library."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier
from grammar.parse import parse_bytes
from library import modifier_paths


@cache
def library_modifiers() -> tuple[Modifier, ...]:
    """All of them, in the order of their files."""
    return tuple(modifier for path in modifier_paths() for modifier in modifiers_in(path))


@cache
def modifiers_in(path: Path) -> tuple[Modifier, ...]:
    """Those of one file."""
    rules = parse_bytes(path.read_bytes(), f"library/modifiers/{path.name}").value
    assert rules is not None, path.name
    found = tuple(modifier_of(sheet).value for sheet in rules.modifiers)
    assert None not in found, path.name
    return tuple(modifier for modifier in found if modifier is not None)
