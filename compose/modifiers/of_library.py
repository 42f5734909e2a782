"""The modifiers of the library."""

from __future__ import annotations

from functools import cache

from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier
from grammar.parse import parse_bytes
from library import modifier_paths


@cache
def library_modifiers() -> tuple[Modifier, ...]:
    """All of them, in the order of their files."""
    found: list[Modifier] = []
    for path in modifier_paths():
        rules = parse_bytes(path.read_bytes(), f"library/modifiers/{path.name}").value
        assert rules is not None, path.name
        for sheet in rules.modifiers:
            modifier = modifier_of(sheet).value
            assert modifier is not None, path.name
            found.append(modifier)
    return tuple(found)
