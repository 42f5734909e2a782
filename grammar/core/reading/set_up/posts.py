"""Where players start who are in play from there: at once, and whatever the place is."""

from __future__ import annotations

from grammar.core.reading.sheet.articles import nodes
from grammar.core.reading.sheet.reader import Reader
from grammar.meanings import PlaceMeaning
from grammar.sentences import play
from grammar.sentences.base import Name, Np


def all_play_on(reader: Reader, where: Np) -> bool:
    """Whether all who start in an area are in play from there: it is no bench and no queue, and the rules speak of it
    at most as the place to which something is brought, or of what lies in it, or where players stay."""
    meant = reader.game.meaning(where.name)
    area = next((each for each in reader.game.areas if PlaceMeaning(each.name) == meant), None)
    if area is None or area.kind in ("bench", "queue"):
        return False
    said = (sentence for section in ("play", "when") for sentence in reader.game.sentences(section))
    return not any(
        isinstance(node, Name) and reader.game.vocabulary.get(node.text) == PlaceMeaning(area.name)
        for sentence in said
        if not isinstance(sentence, play.Take | play.Stay)
        for node in nodes(sentence)
    )
