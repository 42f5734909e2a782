"""What each line of a sheet says, as values: two wordings of one line say the same."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import Any

import attrs

from compose.staging.resolved import resolved
from grammar.core.game import Choice, Play
from grammar.frozen import field, frozen
from grammar.game import Game
from grammar.sentences.base import Node


@frozen
class Meant:
    """A sentence with the values of the core that it gives; some sentences give none of their own."""

    sentence: Node
    values: frozenset[object] = field(repr=False)

    def same(self, other: Meant) -> bool:
        """Whether both say the same, in whatever words."""
        return self.sentence == other.sentence or (bool(self.values) and self.values == other.values)


def lines_meant(game: Game, section: str) -> list[Meant]:
    """The lines of a section, in the order of the sheet."""
    core = resolved(game)
    by_line: defaultdict[int, set[object]] = defaultdict(set)
    for value in _values(core.play):
        for line in getattr(value, "lines", ()):
            by_line[line].add(value)
    numbers = (line.number for line in core.lines if line.section == section and not line.granted)
    sentences = (line.sentence for line in game.sheet.lines(section))
    return [Meant(said, frozenset(by_line[line])) for said, line in zip(sentences, numbers, strict=True)]


def _values(play: Play) -> Iterator[Any]:
    for part in attrs.fields(Play):
        value = getattr(play, part.name)
        for each in value if isinstance(value, tuple) else (value,):
            yield each
            if isinstance(each, Choice):
                yield from each.hanging
