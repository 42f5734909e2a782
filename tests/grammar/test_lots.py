"""What a die decides cannot be said: that is told, and no thing that it might be like is offered for it."""

from __future__ import annotations

import pytest

import library
from grammar.mistakes.wishes import wishes_for
from grammar.parse import parse
from grammar.resolve import resolve

SHEET = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")


@pytest.mark.parametrize(("thing", "decides"), [("1 die for each side", True), ("6 dice", True), ("6 gadgets", False)])
def test_a_die_is_no_target(thing: str, decides: bool) -> None:
    parsed = parse(SHEET.replace("\nset-up", f"  {thing}\n\nset-up", 1), "(test)").value
    assert parsed is not None
    [found] = resolve(parsed.games[0], library.kit_categories()).findings
    assert ("cannot be said yet" in found.title, "plastic pin" in found.hint) == (decides, not decides)


def test_who_wishes_for_a_die_is_told_what_comes_near() -> None:
    assert "to let a die decide" in [wish.wish for wish in wishes_for("throw a die")]
