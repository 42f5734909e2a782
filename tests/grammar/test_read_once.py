"""A game that is read on from where its own lines were read has the core that it has when it is read anew."""

from __future__ import annotations

from pathlib import Path

import pytest

from grammar.core.reading.from_game import core_of
from grammar.core.reading.sheet.once import reread
from grammar.parse import parse_bytes
from grammar.resolve import resolve
from library import granted_sheet, kit_categories

GAMES = (*sorted(Path("library/games").glob("*.rules")), *sorted(Path("tests/told").glob("*.rules")))


@pytest.mark.parametrize("path", GAMES, ids=lambda path: path.stem)
def test_read_on_or_anew(path: Path) -> None:
    rules = parse_bytes(path.read_bytes(), path.name).value
    assert rules is not None
    game = resolve(rules.games[0], kit_categories()).value
    assert game is not None
    read_on = core_of(game, granted_sheet())
    assert reread(game) is None, "it was read on, and is kept no longer"
    anew = core_of(game, granted_sheet())
    assert read_on == anew and read_on.value is not None
    assert read_on.value.lines == anew.value.lines if anew.value else False
    assert core_of(game) == core_of(game), "what is kept is read as it was"
