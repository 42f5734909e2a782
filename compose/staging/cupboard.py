"""The kit of a game against the cupboard: enough, short, or made up with stand-ins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard
from grammar.core.values import KindId
from grammar.frozen import evolve, field, frozen
from grammar.game import Game, GameKit
from library import KitItem
from library.records import BALL_SKILLS

LARGEST_RATIO = 3.0  # assumption: a stand-in is at most three times as wide or high, and no less than a third


@frozen
class StandIn:
    """So many of another thing in the place of what is missing: how they are called, and one of them."""

    name: str
    count: int
    like: str


@frozen
class KitRow:
    """A line of a game's kit: how many are needed in all, how many there are, what stands in, what is short.

    `perhaps_like` is a thing of its sort that is there, where nothing says what the line's own is like.
    """

    line: GameKit
    needed: int
    there: int
    stand_ins: tuple[StandIn, ...] = field(default=())
    perhaps_like: str = field(default="")

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
    return tuple(_with_stand_ins(game, row, left, kit) for row in rows)


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
    for other in sorted(_alike(game, row.line, left, kit), key=lambda item: _unlike(kit[row.line.like], item)):
        if missing <= 0:
            break
        taken = _taken(left, other.name, missing)
        missing -= taken
        if taken:
            stand_ins.append(StandIn(other.name if taken == 1 else other.plural, taken, other.name))
    return evolve(row, stand_ins=tuple(stand_ins), perhaps_like=_perhaps_like(row.line, left, kit))


def _perhaps_like(line: GameKit, left: Mapping[str, int], kit: Mapping[str, KitItem]) -> str:
    """Nothing is compared with what the library does not know."""
    if line.like in kit:
        return ""
    return next((name for name in left if name in kit and kit[name].category == line.category), "")


def _alike(game: Game, line: GameKit, left: Mapping[str, int], kit: Mapping[str, KitItem]) -> Iterator[KitItem]:
    """What could take the place of a thing: of its sort, fit for all that is done with it, about as large, and
    soft where it is soft."""
    wanted = kit.get(line.like)
    if wanted is None:
        return
    used = _used_for(game, line)
    for name, count in left.items():
        other = kit.get(name)
        if not count or other is None or other.category != wanted.category or other is wanted:
            continue
        if set(used) <= set(other.may) and (other.soft or not wanted.soft) and _unlike(wanted, other) <= LARGEST_RATIO:
            yield other


def _used_for(game: Game, line: GameKit) -> tuple[str, ...]:
    """The skills for which a ball of the game is used."""
    if line.category != "ball":
        return ()
    tried = (each for each in resolved(game).play.attempts if each.ball == KindId(line.name))
    return tuple(dict.fromkeys(each.skill.value for each in tried if each.skill.value in BALL_SKILLS))


def _unlike(wanted: KitItem, other: KitItem) -> float:
    """How many times one is as large as the other, in whichever of width and height they differ more; 1 for alike."""
    ratios = [max(a, b) / min(a, b) for a, b in zip(wanted.size_m, other.size_m, strict=True) if a > 0 and b > 0]
    return max(ratios, default=1.0)
