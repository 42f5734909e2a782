"""A ball that goes back: to the side that sent it, where its balls lie, or to a place of that side."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import SHARED, KindId, SideId, Sort, Spot
from grammar.game import Game
from grammar.said import quoting, write
from grammar.sentences import play, resting, then
from grammar.sentences.base import Name, Node, Np

THEIRS = (Whose.UNSAID, Whose.OWN, Whose.THAT, Whose.ACTOR)


def goes_back_to_side(game: Game, node: Node) -> bool:
    """Whether a sentence says that a ball goes back to its side, and to no place that the sheet names."""
    if not isinstance(node, then.GoesBack | resting.RestBack):
        return False
    if isinstance(node, then.GoesBack) and not is_ball_sent(game, node.what.name):
        return False
    return node.where is None or bool(game.kit_meant(node.where.name))


def is_ball_sent(game: Game, name: Name) -> bool:
    """Whether a name means balls that nobody takes from place to place."""
    phrases = (phrase for said in game.all_of("play", play.Take) for phrase in said.phrases)
    taken = {line.name for phrase in phrases for line in game.kit_meant(phrase.name)}
    found = game.kit_meant(name)
    return any(line.category == "ball" for line in found) and not {line.name for line in found} & taken


def back_to(reader: Reader, place: resting.RestBack, side: SideId) -> Spot:
    """Where a ball lies that a side sent and that goes back. Raises Senseless for a place that is not theirs."""
    if place.where is None:
        return reader.own_part(side)
    said = whose(reader.game, place.where, place=True).whose
    if said not in THEIRS:
        title = "`{said}`: what goes back goes to a place of whoever sent it."
        raise Senseless(place.where, title, write("the ball goes back", "the ball goes to the other side"))
    if reader.is_kit(place.where):
        kinds = reader.kinds_meant(place.where, *Sort)
        if side not in {each for kind in kinds for each in in_store_of(reader, place.where, kind)}:
            raise _not_of_each(place.where)
        return reader.own_part(side)
    own = frozenset({side})
    spots = reader.spots(None, place.where, Spoken(reader.side_ids, own=own, that=own, parts={Whose.ACTOR: own}), own)
    return spots[0]


def in_stores(reader: Reader, where: Np, kind: KindId, own: frozenset[SideId]) -> tuple[Spot, ...]:
    """Where balls of these sides lie that are in their crates at the start. Raises Senseless."""
    return tuple(reader.own_part(side) for side in in_store_of(reader, where, kind) if side in own)


def in_store_of(reader: Reader, where: Np, kind: KindId) -> tuple[SideId, ...]:
    """The sides in whose crate a ball lies: with their others, since it stands where they are. Raises Senseless."""
    owners = [thing.owner for thing in reader.owned(kind)]
    if SHARED in owners:
        raise _not_of_each(where)
    return tuple(side for side in reader.side_ids if side in owners)


def _not_of_each(where: Np) -> Senseless:
    title = "`{said}`: it is nobody's, so that it is not known whose balls lie there."
    hint = quoting("Write in the kit: 1 {name} for each side. Or name a place of the court.", name=where.name.text)
    return Senseless(where, title, hint)
