"""How small suggestions for drawn classes are beside trying every set, and how long the everyday class takes.

    python -m tests.benchmarks.suggest_for_class [games|singles|pairs]

`games`: the everyday class with every game. `singles`: fifty classes beside all single modifiers at all amounts.
`pairs`: the first ten of them that no single modifier helps beside all pairs, at their least, usual and most amounts.
"""

from __future__ import annotations

import sys
import time
from math import inf
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "fit"))

from drawn_classes import Drawn, drawn, everyday, exhaustive
from playing_games import every_modifier, library_games

from compose.fit.suggest.amounts import at_the_ends, everywhere
from compose.fit.suggest.score import Scored
from compose.fit.suggest.search import Found, search
from compose.fit.suggest.side_by_side import on_cores
from compose.fit.suggest.suggestion import suggestions


def games() -> None:
    """A line for each game with the everyday class."""
    ends = at_the_ends(every_modifier())
    for name, game in sorted(library_games().items()):
        begun, scorer = time.perf_counter(), Drawn(everyday(), game).scorer()
        with on_cores(scorer, 2) as scoring:
            found = search(scorer, ends, scoring=scoring)
        told = [[use.label for use in each.uses] for each in suggestions(found, scorer, 1)]
        print(f"{name}: {time.perf_counter() - begun:.1f} s, {found.tried} tried, {told}", flush=True)


def singles() -> None:
    """A line for each of fifty classes: how much what is found changes, and the least single modifier that does it."""
    ends, tried = at_the_ends(every_modifier()), tuple(everywhere(every_modifier()))
    for seed in range(50):
        group = drawn(seed)
        found = search(group.scorer(), ends, wanted=1)
        _tell(seed, group, _first(found), exhaustive(group.scorer(), tried, ()))


def pairs() -> None:
    """A line for each of the first ten classes that the game does not fit as it is and for which no single modifier is
    found (`singles` says whether there is one): how much what is found changes, and the least pair; only those that
    change less than what was found are scored."""
    ends, left = at_the_ends(every_modifier()), 10
    for seed in range(50):
        group, begun = drawn(seed), time.process_time()
        found = search(group.scorer(), ends, wanted=1)
        ours = _first(found)
        if not left or (ours is not None and len(ours.uses) < 2):
            continue
        left -= 1
        lines = ours.edits if ours is not None and len(ours.uses) == 2 else inf
        _tell(seed, group, ours, exhaustive(group.scorer(), (), ends, lines), f", {time.process_time() - begun:.0f} s")


def _first(found: Found) -> Scored | None:
    return found.solutions[0] if found.solutions else None


def _tell(seed: int, group: Drawn, ours: Scored | None, least: Scored | None, taken: str = "") -> None:
    worse = least is not None and (ours is None or ours.change[:2] > least.change[:2])
    told = [f"{each.change[:2]} {[use.label for use in each.uses]}" if each else "None" for each in (ours, least)]
    verdict = f"{' WORSE' if worse else ''}{taken}"
    print(f"class {seed}: {group.game.title}: ours {told[0]}, least {told[1]}{verdict}", flush=True)


if __name__ == "__main__":
    {"games": games, "singles": singles, "pairs": pairs}[sys.argv[1] if len(sys.argv) > 1 else "games"]()
