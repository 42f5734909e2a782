"""How small suggestions for drawn classes are beside trying every set, and how long the everyday class takes.

    python -m tests.benchmarks.suggest_for_class [games|singles|pairs]

`games`: the everyday class with every game. `singles`: fifty classes beside all single modifiers at all amounts.
`pairs`: ten of them beside all pairs, too, at their least, usual and most amounts, which takes hours.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "fit"))

from drawn_classes import Drawn, drawn, everyday, exhaustive
from playing_games import every_modifier, library_games

from compose.fit.suggest.amounts import at_the_ends, everywhere
from compose.fit.suggest.search import search
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


def classes(pairs: bool) -> None:
    """A line for each drawn class: how much what is found changes, and the least that does it."""
    ends, singles = at_the_ends(every_modifier()), tuple(everywhere(every_modifier()))
    for seed in range(0, 50, 5 if pairs else 1):
        group = drawn(seed)
        found = search(group.scorer(), ends, wanted=1)
        wanted = exhaustive(group.scorer(), singles, ends if pairs else ())
        ours = found.solutions[0].change[:2] if found.solutions else None
        least = wanted.change[:2] if wanted else None
        worse = least is not None and (ours is None or ours > least)
        print(f"class {seed}: {group.game.title}: ours {ours}, least {least}{' WORSE' if worse else ''}", flush=True)


if __name__ == "__main__":
    asked = sys.argv[1] if len(sys.argv) > 1 else "games"
    games() if asked == "games" else classes(asked == "pairs")
