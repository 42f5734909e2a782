"""Sets of modifiers scored: what they make of a game, and how far that is from each wish."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import CHECK, COSTS, Miss, Wish
from compose.modifiers.apply import apply
from compose.modifiers.difference.same_game import played_as
from compose.modifiers.modifier import Use
from grammar.game import Game

Uses = tuple[Use, ...]
_KEPT = 32  # our choice: games kept, so that a set is made from one with a modifier less


Change = tuple[int, int, int, float]


def change(uses: Uses, edits: int) -> Change:
    """How much a set changes: modifiers, lines, amounts that are not the usual ones, and how far off those are."""
    taken = ((each, use.values.get(each.parameter)) for use in uses for each in use.modifier.takes)
    unusual = [(each, value) for each, value in taken if value is not None]
    far = sum(abs(value.value - each.usually.value) / each.usually.value for each, value in unusual)
    return len(uses), edits, len(unusual), round(far, 6)


@frozen
class Scored:
    """A set of modifiers in the order applied: how many lines it changes, and how far it is from each wish (None
    where that was not asked, because a wish that costs less to ask is missed).

    Games with the same `key` are as good as each other. `situations` were looked at in games of its `shape`, and
    `moves` made in rounds played of it where they are too many.
    """

    uses: Uses
    edits: int
    misses: tuple[Miss | None, ...]
    key: int
    shape: int = 0
    situations: int = 0
    moves: int = 0

    @property
    def met(self) -> bool:
        """Whether every wish is met."""
        return all(miss is not None and miss.met for miss in self.misses)

    @property
    def names(self) -> tuple[str, ...]:
        """The names of its modifiers, in the order applied."""
        return tuple(use.modifier.name for use in self.uses)

    @property
    def change(self) -> Change:
        """How much it changes."""
        return change(self.uses, self.edits)

    @property
    def hope(self) -> tuple[float, ...]:
        """Small where more was worth asking, fewer wishes are missed, by less, and less is changed."""
        asked = [miss.gap for miss in self.misses if miss is not None]
        missed = sum(gap > 0 for gap in asked)
        return float(len(self.misses) - len(asked)), float(missed), round(sum(asked), 3), *map(float, self.change)


class Scorer:
    """Scores sets of modifiers of one game against wishes; what it answers hangs on nothing else."""

    def __init__(self, game: Game, wishes: Sequence[Wish], looker: Looker) -> None:
        self.game, self.wishes, self.looker = game, tuple(wishes), looker
        self._only_shape = all(wish.cost == CHECK for wish in wishes)
        self._made: dict[tuple[str, ...], tuple[Game, int] | None] = {}
        self._missed: dict[int, tuple[Miss | None, ...]] = {}

    def __call__(self, uses: Uses) -> Scored | None:
        """The score of a set; None where its modifiers do not go together or one of them changes nothing."""
        made = self.made(uses)
        if made is None:
            return None
        game, edits = made
        key = hash(self._key(game))
        if key not in self._missed:  # other sets may have made a game that is as good
            self._missed[key] = self._misses(game)
        misses = self._missed[key]
        looked = [miss for miss, wish in zip(misses, self.wishes, strict=True) if miss is not None and wish.cost]
        shape, situations = self._looked_at(game) if looked else (0, 0)
        moves = self.looker.moves(game) if looked else 0
        return Scored(uses, edits, misses, key, shape, situations, moves)

    def made(self, uses: Uses) -> tuple[Game, int] | None:
        """The game that a set makes and how many lines it changes."""
        if not uses:
            return self.game, 0
        labels = tuple(use.label for use in uses)
        if labels not in self._made:
            while len(self._made) >= _KEPT:
                del self._made[next(iter(self._made))]
            self._made[labels] = self._with_one_more(uses)
        return self._made[labels]

    def _with_one_more(self, uses: Uses) -> tuple[Game, int] | None:
        before = self.made(uses[:-1])
        outcome = apply(before[0], uses[-1], self.looker.kit).value if before is not None else None
        if before is None or outcome is None or not outcome[1]:
            return None
        return outcome[0], before[1] + len(outcome[1])

    def _misses(self, game: Game) -> tuple[Miss | None, ...]:
        """Wishes that cost more are asked only where all cheaper ones are met."""
        misses: list[Miss | None] = [None] * len(self.wishes)
        for cost in COSTS:
            if any(miss is not None and not miss.met for miss in misses):
                break
            for number, wish in enumerate(self.wishes):
                if wish.cost == cost:
                    misses[number] = wish.miss(game, self.looker)
        return tuple(misses)

    def _key(self, game: Game) -> Hashable:
        return self.looker.shape(game) if self._only_shape else played_as(game)

    def _looked_at(self, game: Game) -> tuple[int, int]:
        answer = self.looker.answer(game)
        states = answer.facts.states if answer is not None and answer.facts is not None else 0
        return hash(self.looker.shape(game)), states
