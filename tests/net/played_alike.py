"""Whether two sheets are played alike by the second reader, who shares no code with the core nor with the net.

A reading that drops a word gives two sheets one core, and one that drops it later one net; the second reader still
plays them differently. It is followed along rounds drawn by a seed, and looks at all that can happen on the way.
"""

from __future__ import annotations

import random
from collections.abc import Mapping

from grammar.tree import GameSheet
from tests.interpreter.rounds import Round
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import granted

SEED, ROUNDS, MOVES = 3, 3, 25


def played_alike(one: GameSheet, other: GameSheet, players: Mapping[str, int]) -> bool:
    """Whether in all that was looked at the same can happen, and the same is said of it by the finish and the clock."""
    mine, its = (Round(Sheet(sheet, granted(), players)) for sheet in (one, other))
    drawn = random.Random(SEED)
    return mine.begin == its.begin and all(_one_round(mine, its, drawn) for _ in range(ROUNDS))


def _one_round(mine: Round, its: Round, drawn: random.Random) -> bool:
    state = mine.begin
    for _ in range(MOVES):
        over = mine.result(state)
        if (over, mine.at_the_bell(state)) != (its.result(state), its.at_the_bell(state)):
            return False
        if over is not None:
            return True
        after = {each.state for each in mine.successors(state)}
        if after != {each.state for each in its.successors(state)}:
            return False
        if not after:
            return True
        state = drawn.choice(sorted(after, key=repr))
    return True
