"""What a sheet of any kind says of itself: texts under about, credit, caution, and its licence."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.sentences.head import Licence, Told
from grammar.tree import Line


def told_in(lines: Iterable[Line], topic: str) -> tuple[str, ...]:
    """The texts under a word of the head."""
    told = (line.sentence for line in lines if isinstance(line.sentence, Told))
    return tuple(each.text for each in told if each.topic == topic)


def licence_in(lines: Iterable[Line]) -> str | None:
    """The licence that is named, or None."""
    return next((line.sentence.identifier for line in lines if isinstance(line.sentence, Licence)), None)
