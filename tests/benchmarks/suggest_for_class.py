"""How small suggestions for drawn classes are beside trying every set, and how long the everyday class takes.

    python -m tests.benchmarks.suggest_for_class [classes]

Singles at all amounts; pairs at their least, usual and most are tried for every fifth class. It takes long.
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


def main() -> None:
    """Print a line for each game with the everyday class, then one for each drawn class."""
    ends = at_the_ends(every_modifier())
    for name, game in sorted(library_games().items()):
        begun, scorer = time.perf_counter(), Drawn(everyday(), game).scorer()
        with on_cores(scorer, 2) as scoring:
            found = search(scorer, ends, scoring=scoring)
        told = [[use.label for use in each.uses] for each in suggestions(found, scorer, 1)]
        print(f"{name}: {time.perf_counter() - begun:.1f} s, {found.tried} tried, {told}", flush=True)
    for seed in range(int(sys.argv[1]) if len(sys.argv) > 1 else 50):
        group = drawn(seed)
        found = search(group.scorer(), ends, wanted=1)
        wanted = exhaustive(group.scorer(), tuple(everywhere(every_modifier())), ends if seed % 5 == 0 else ())
        ours = found.solutions[0].change[:2] if found.solutions else None
        print(f"class {seed}: ours {ours}, least {wanted.change[:2] if wanted else None}", flush=True)


if __name__ == "__main__":
    main()
