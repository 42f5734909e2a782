"""Every number of the library names a source that sources.toml knows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import attrs
import pytest

from library.load import courts, halls, kit_catalogue, sources
from library.norm_tables import norms
from library.records import Figure

DOORS = (courts, halls, kit_catalogue, norms)


def figures(value: Any) -> Iterator[Figure]:
    """Every figure inside a record."""
    if isinstance(value, Figure):
        yield value
    elif attrs.has(type(value)):
        for part in attrs.fields(type(value)):
            yield from figures(getattr(value, part.name))
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from figures(inner)
    elif isinstance(value, tuple):
        for inner in value:
            yield from figures(inner)


@pytest.mark.parametrize("door", DOORS, ids=lambda door: door.__name__)
def test_every_figure_has_a_source(door: Any) -> None:
    found = list(figures(door()))
    assert len(found) > 5
    known = set(sources().values())
    for figure in found:
        assert figure.source in known or figure.source.key in sources()
