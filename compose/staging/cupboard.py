"""The kit of a game against the cupboard: enough, short, or made up with stand-ins."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from compose.staging.school_class import InCupboard
from compose.staging.standing_in import alike, unlike
from grammar.frozen import evolve, field, frozen
from grammar.game import Game, GameKit
from library import KitItem


@frozen
class StandIn:
    """So many of another thing in the place of what is missing: how they are called, and one of them."""

    name: str
    count: int
    like: str


@frozen
class KitRow:
    """A line of a game's kit: how many are needed in all, how many of these there are, what stands in, what is short.

    `spare` are those of its kind that lie in the cupboard besides and that no line needs. `perhaps_like` is a thing of
    its sort that is there, where nothing says what the line's own is like.
    """

    line: GameKit
    needed: int
    there: int
    stand_ins: tuple[StandIn, ...] = field(default=())
    perhaps_like: str = field(default="")
    spare: int = field(default=0)

    @property
    def in_cupboard(self) -> int:
        """How many there are in all, of which other lines need none."""
        return self.there + self.spare

    @property
    def is_stood_in(self) -> bool:
        """Whether other things of one kind stand in for all that are needed."""
        return len(self.stand_ins) == 1 and self.stand_ins[0].count == self.needed

    @property
    def short(self) -> int:
        """How many are missing even with the stand-ins."""
        return self.needed - self.there - sum(each.count for each in self.stand_ins)


def kit_rows(
    game: Game,
    players: Sequence[Mapping[str, int]],
    cupboard: Sequence[InCupboard] | None,
    kit: Mapping[str, KitItem],
) -> tuple[KitRow, ...]:
    """One row for each line of the game's kit, for all games together; what is there is given out in the order of
    the sheet, the right thing before any stand-in. Where nobody says what lies in the cupboard, all is there."""
    if cupboard is None:
        return tuple(KitRow(line, needed, needed) for line in game.kit for needed in (_needed(line, players),))
    left: dict[str, int] = {}
    for each in cupboard:
        left[_key(each.like, kit)] = left.get(_key(each.like, kit), 0) + each.count
    rows = []
    for line in game.kit:
        needed = _needed(line, players)
        rows.append(KitRow(line, needed, _taken(left, _key(line.like, kit), needed)))
    stood_in = [_with_stand_ins(game, row, left, kit) for row in rows]
    return tuple(evolve(row, spare=left.pop(_key(row.line.like, kit), 0)) for row in stood_in)


def _needed(line: GameKit, players: Sequence[Mapping[str, int]]) -> int:
    return sum(line.total(sides) // max(1, line.parts) for sides in players)


def _key(name: str, kit: Mapping[str, KitItem]) -> str:
    return kit[name].name if name in kit else name


def _taken(left: dict[str, int], key: str, needed: int) -> int:
    taken = min(needed, left.get(key, 0))
    if taken:
        left[key] -= taken
    return taken


def _with_stand_ins(game: Game, row: KitRow, left: dict[str, int], kit: Mapping[str, KitItem]) -> KitRow:
    missing, stand_ins = row.needed - row.there, list[StandIn]()
    if missing <= 0:
        return row
    for other in _nearest_first(game, row.line, left, kit):
        if missing <= 0:
            break
        taken = _taken(left, other.name, missing)
        missing -= taken
        if taken:
            stand_ins.append(StandIn(other.name if taken == 1 else other.plural, taken, other.name))
    return evolve(row, stand_ins=tuple(stand_ins), perhaps_like=_perhaps_like(row.line, left, kit))


def _nearest_first(game: Game, line: GameKit, left: Mapping[str, int], kit: Mapping[str, KitItem]) -> list[KitItem]:
    """What may stand in: things of the same sort first, then by how alike they are in size."""
    found = tuple(alike(game, line, left, kit))
    return sorted(found, key=lambda item: (item.category != kit[line.like].category, unlike(kit[line.like], item)))


def _perhaps_like(line: GameKit, left: Mapping[str, int], kit: Mapping[str, KitItem]) -> str:
    """Nothing is compared with what the library does not know."""
    if line.like in kit:
        return ""
    return next((name for name in left if name in kit and kit[name].category == line.category), "")
