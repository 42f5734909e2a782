"""Library games with library modifiers, by the stems of their files."""

from __future__ import annotations

from functools import cache

import library
from compose.modifiers.apply import remix
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Use
from grammar.game import Game
from grammar.parse import parse_bytes


def remixed(base: Game, *names: str) -> Game:
    """The base with modifiers of the library, with their usual values."""
    outcome = remix(base, [_use(name) for name in names], library.kit_names())
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    return outcome.value.game


def fitted(base: Game, name: str) -> Game | None:
    """The base with one modifier at its least values, None where it does not fit or changes nothing."""
    modifier = _use(name).modifier
    least = {each.parameter: each.least for each in modifier.takes}
    outcome = remix(base, [Use(modifier, least)], library.kit_names())
    return outcome.value.game if outcome.value is not None and outcome.value.edits else None


@cache
def _use(name: str) -> Use:
    path = next(path for path in library.modifier_paths() if path.stem == name)
    sheets = parse_bytes(path.read_bytes(), path.name)
    assert sheets.value is not None
    outcome = modifier_of(sheets.value.modifiers[0])
    assert outcome.value is not None
    return Use(outcome.value)
