"""Everything in the kit has a name that a sheet may use: one without figures and reserved words."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse_line
from grammar.sentences.sides import Kit

ITEMS = {item.name: item for item in library.kit_names().values()}


@pytest.mark.parametrize("name", sorted(ITEMS))
def test_some_name_of_everything_can_be_written(name: str) -> None:
    names = [each for each, item in library.kit_names().items() if item.name == name]
    read = [parse_line("kit", f"3 things, like a {each}").value for each in names]
    assert any(isinstance(each, Kit) and each.like is not None and each.like.text in names for each in read), names
