"""Where the players are at the start: as the set-up says, else where they stay, else in their part of the court."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.floor.items import USUAL_SIZE_M, Batch, Muster, told
from compose.staging.floor.phrases import EVERY, homes, side_named, spots
from compose.staging.floor.regions import Region
from grammar.game import Game, GameSide
from grammar.meanings import PlayerMeaning, SideMeaning
from grammar.sentences.base import Name
from grammar.sentences.sides import Placing, Sides

SIZE_M = USUAL_SIZE_M["player"]


def player_batches(muster: Muster) -> Iterator[Batch]:
    """Every batch of players, those that the set-up places first."""
    for placing in muster.game.placings:
        who = _players(muster.game, placing.what.name)
        if who is not None:
            yield from _placed(muster, placing, who)
    for side in muster.game.sides:
        yield from _by_their_things(muster, side)
        yield from _unplaced(muster, side)


def _players(game: Game, name: Name) -> PlayerMeaning | None:
    meaning = game.meaning(name)
    if isinstance(meaning, SideMeaning):
        return PlayerMeaning(meaning.side)
    return meaning if isinstance(meaning, PlayerMeaning) else None


def _placed(muster: Muster, placing: Placing, who: PlayerMeaning) -> Iterator[Batch]:
    only = who.side or side_named(muster.game, placing.what.owner, None)
    for side in muster.game.sides:
        if only not in (None, side.name):
            continue
        for role, total in _groups(muster, side.name):
            if who.role in (None, role):
                yield from _shared(muster, placing, side.name, role, total)


def _shared(muster: Muster, placing: Placing, side: str, role: str | None, total: int) -> Iterator[Batch]:
    """The players of one side and role over the places that a placing means."""
    wanted = muster.wanted(placing, total)
    found = spots(muster.game, muster.ground, placing, side)
    left = total - muster.used["player", side, role]
    left = left if wanted is None else min(left, wanted)
    for order, (region, on) in enumerate(found):
        every = placing.count is not None and placing.where.determiner in EVERY
        count, first = muster.take("player", side, role, wanted if every else -(-left // (len(found) - order)), total)
        left -= count
        yield Batch(
            "player",
            "player",
            side,
            role,
            count,
            first,
            region,
            told(placing),
            placing.spread,
            SIZE_M,
            placing.span,
            on,
            placing.preposition,
        )


def _groups(muster: Muster, side: str) -> list[tuple[str | None, int]]:
    """The roles of a side with their counts, then the players without a role.

    A role has as many as `players` says under "side role" ("north keeper"), else the fewest allowed.
    """
    left = muster.players.get(side, 0)
    found: list[tuple[str | None, int]] = []
    for role in muster.game.roles:
        if role.side in (None, side):
            count = min(muster.players.get(f"{side} {role.name}", role.least), left)
            found.append((role.name, count))
            left -= count
    return [*found, (None, left)]


def _by_their_things(muster: Muster, side: GameSide) -> Iterator[Batch]:
    """Where everyone plays for themselves and there are as many targets as players left, each stands by one."""
    own = any(
        "each for themselves" in sentence.options
        for sentence in muster.game.all_of("sides", Sides)
        if side.name in (name.text for name in sentence.names)
    )
    left = muster.players.get(side.name, 0) - muster.used["player", side.name, None]
    targets = [line for line in muster.game.kit if line.category == "target" and left > 0]
    things = next((line for line in targets if muster.count_of(line, side.name) == left), None)
    if own and things and not muster.game.roles:
        count, first = muster.take("player", side.name, None, left, muster.players[side.name])
        region = Region(muster.ground.court, side.name)
        yield Batch(
            "player",
            "player",
            side.name,
            None,
            count,
            first,
            region,
            f"beside the {things.plural}",
            None,
            SIZE_M,
            side.span,
            things.name,
            "beside",
        )


def _unplaced(muster: Muster, side: GameSide) -> Iterator[Batch]:
    """Players that the set-up does not speak of start where they stay, else in their part of the court."""
    for role, total in _groups(muster, side.name):
        found, where = homes(muster.game, muster.ground, side.name, role)
        left = total - muster.used["player", side.name, role]
        for order, region in enumerate(found):
            count, first = muster.take("player", side.name, role, -(-left // (len(found) - order)), total)
            left -= count
            if count:
                yield Batch("player", "player", side.name, role, count, first, region, where, None, SIZE_M, side.span)
