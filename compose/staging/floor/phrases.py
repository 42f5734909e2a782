"""What phrases of the rules mean on the floor: whose things, where players stay, which kit."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.regions import Ground, Region, regions
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning, SideMeaning
from grammar.sentences.base import Name, Np, Owner, OwnerName
from grammar.sentences.play import Stay
from grammar.sentences.sides import Placing

OWN_PART = "in their part of the court"
EVERY = ("each", "every", "all", "their")


def side_named(game: Game, owner: Owner | OwnerName | None, own: str | None) -> str | None:
    """The side that an owner phrase means, seen from the side `own`."""
    sides = [side.name for side in game.sides]
    if isinstance(owner, OwnerName):
        meaning = game.meaning(owner.name)
        return meaning.side if isinstance(meaning, SideMeaning | PlayerMeaning) else None
    if isinstance(owner, Owner) and owner.other and own in sides and len(sides) == 2:
        return next(side for side in sides if side != own)
    return own


def owner_of(game: Game, phrase: Np, own: str | None) -> str | None:
    """The side whose things a phrase names, seen from `own`: "the lanterns of the other side"."""
    return side_named(game, Owner("the", "other") if phrase.other else phrase.owner, own)


def kit_lines(game: Game, name: Name) -> Iterator[GameKit]:
    """The lines of the kit that a name means: one, or all of a category."""
    meaning = game.meaning(name)
    if isinstance(meaning, KitMeaning):
        yield game.kit_named(meaning.key)
    elif isinstance(meaning, CategoryMeaning):
        yield from (line for line in game.kit if line.category == meaning.category)


def spots(game: Game, ground: Ground, placing: Placing, owner: str | None) -> list[tuple[Region, str | None]]:
    """The regions that a placing means for the things of one owner, and the thing they are put upon."""
    where = placing.where
    meaning = game.meaning(where.name)
    side = side_named(game, where.owner, owner)
    if isinstance(meaning, PlaceMeaning):
        found = regions(ground, meaning.place, placing.preposition, side, None)
        several = where.determiner in EVERY or where.name.text != meaning.place or where.owner is not None
        several = several or any(area.name == meaning.place for area in ground.areas)
        return [(region, None) for region in (found if several else found[:1])]
    upon = meaning.key if isinstance(meaning, KitMeaning) else getattr(meaning, "category", where.name.text)
    return [(Region(ground.court, side), upon)]


def homes(game: Game, ground: Ground, side: str, role: str | None) -> tuple[list[Region], str]:
    """Where the players of a side stay by the rules of play, else their equal part of the court."""
    for stay in stays(game, side, role):
        meaning = game.meaning(stay.where.name)
        if isinstance(meaning, PlaceMeaning) and meaning.place != "court":
            whose = owner_of(game, stay.where, side)
            where = f"{stay.preposition} {stay.where.words()}"
            return regions(ground, meaning.place, stay.preposition, whose, None), where
    return [Region(ground.slice_of(side), side, ground.facing(side))], OWN_PART


def stays(game: Game, side: str, role: str | None) -> Iterator[Stay]:
    """The sentences that say where such a player stays, those about the role before those about all."""
    found: list[tuple[bool, Stay]] = []
    for stay in game.all_of("play", Stay):
        meaning = game.meaning(stay.who.name)
        if isinstance(meaning, SideMeaning):
            meaning = PlayerMeaning(meaning.side)
        if not isinstance(meaning, PlayerMeaning):
            continue
        fits = meaning.side in (None, side) and meaning.role in (None, role)
        if fits and side_named(game, stay.who.owner, side) == side:
            found.append((meaning.role is None, stay))
    yield from (stay for _general, stay in sorted(found, key=lambda pair: pair[0]))
