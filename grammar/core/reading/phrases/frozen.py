"""Players who freeze: they stand where they are, out of play, till somebody frees them. No area is theirs."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.play import Turn, Waiting
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken
from grammar.core.values import At, Landmark, SideId, Spot
from grammar.meanings import FrozenMeaning
from grammar.said import write
from grammar.sentences.base import Node, Np
from grammar.sentences.determiners import ALL


def where_frozen(side: SideId) -> Spot:
    """Where the players of a side are who froze: wherever that was."""
    return Spot(Landmark.FROZEN, side)


def is_frozen(reader: Reader, phrase: Node | None) -> bool:
    """Whether a phrase means players who froze."""
    return isinstance(phrase, Np) and isinstance(reader.game.meaning(phrase.name), FrozenMeaning)


def froze_at(reader: Reader) -> frozenset[At]:
    """Wherever anybody may have frozen."""
    return frozenset(At(where_frozen(side)) for side in reader.side_ids)


def frozen_ones(reader: Reader, phrase: Np, spoken: Spoken, unsaid: frozenset[SideId]) -> Iterator[Waiting]:
    """Those of each side whom a phrase means: all, or one of them, whoever it is."""
    said, role = reader.player_phrase(phrase)
    sides = spoken.meant(said, unsaid)
    everybody = phrase.determiner in ALL
    groups = [sides] if everybody else [frozenset({side}) for side in reader.side_ids if side in sides]
    for group in groups:
        who = frozenset(reader.of_role(group, role))
        spots = frozenset(where_frozen(side) for side in group)
        if who:
            yield Waiting(who, spots, Turn.ALL if everybody else Turn.FIRST)


def mates_frozen(reader: Reader, phrase: Np, side: SideId, spoken: Spoken) -> Waiting:
    """Those of one's own side whom a phrase means. Raises Senseless."""
    found = tuple(frozen_ones(reader, phrase, spoken, frozenset({side})))
    if [each.at for each in found] != [{where_frozen(side)}]:
        title = "`{said}`: players help those of their own side."
        raise Senseless(phrase, title, write(f"{phrase.name.text} of their side"))
    return found[0]


def frozen_places(reader: Reader, phrase: Np, spoken: Spoken, unsaid: frozenset[SideId]) -> frozenset[At]:
    """Where those are whom a phrase means."""
    found = frozen_ones(reader, phrase, spoken, unsaid)
    return frozenset(At(spot) for waiting in found for spot in waiting.at)
