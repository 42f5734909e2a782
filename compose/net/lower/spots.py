"""Phrases of place → the key under which tokens lie there."""

from __future__ import annotations

from compose.net.lower.builder import Builder, Key
from grammar.meanings import PlaceMeaning, side_named
from grammar.sentences.base import Np, OwnerName

_SHARED = ("middle", "middle line", "court")


def spot_key(builder: Builder, preposition: str | None, where: Np, own: str, toward: str) -> Key:
    """The key of a place for balls.

    `own` is the side of whoever the sentence speaks of, `toward` the side at which something was aimed:
    a phrase without an owner means the latter's ("behind the back line"), "their" means the former's.
    """
    meaning = builder.game.meaning(where.name)
    assert isinstance(meaning, PlaceMeaning)
    side = side_meant(builder, where, own, toward)
    if meaning.place == "half":
        return ("half", side) if builder.game.halved else ("court", None)
    if meaning.built_in:
        if meaning.place in _SHARED:
            return ("middle" if meaning.place != "court" else "court", None)
        return (f"{preposition or 'at'} the {meaning.place}", side)
    area = builder.game.area_named(meaning.place)
    return (meaning.place, side if area and area.each else None)


def side_meant(builder: Builder, phrase: Np, own: str, toward: str) -> str:
    """The side that a phrase belongs to."""
    owner = phrase.owner
    if isinstance(owner, OwnerName):
        named = builder.game.vocabulary.get(owner.name.text)
        return side_named(named) or own
    if owner is not None:
        return toward if owner.other and toward != own else (_against(builder, own) if owner.other else own)
    if phrase.other:
        return toward if toward != own else _against(builder, own)
    if phrase.determiner in ("their", "its", "each", "every"):
        return own
    return toward


def named_sides(builder: Builder, phrase: Np) -> tuple[str, ...]:
    """The one side that a phrase names ("north's queue", "the queue of north"), or else all of them."""
    word = phrase.possessive.removesuffix("'s") if phrase.possessive else None
    if isinstance(phrase.owner, OwnerName):
        word = phrase.owner.name.text
    side = side_named(builder.game.vocabulary.get(word)) if word else None
    return (side,) if side else builder.side_names


def _against(builder: Builder, side: str) -> str:
    others = builder.others(side)
    return others[0] if others else side
