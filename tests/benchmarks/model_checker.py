"""Side by side in one run: the large lantern game and library games, here and in a probabilistic model checker.

Run with `python -m tests.benchmarks.model_checker [rounds]`; needs stormpy (not among the test requirements).
Both get the same net, the checker as the text that the export command writes. For each game: building the
model, the odds of one end with the mean time, and the chance to be over by a time; here also everything that
the check proves, which has no counterpart there. The best of a few rounds counts for each question, in seconds
of the processor (both work on one at a time), so that other work on the machine hardly matters. Prints the
numbers of both and the seconds; judges nothing.
"""

from __future__ import annotations

import os

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # before NumPy is loaded: idle helpers would be counted as work

import platform
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

import library
from compose.check import StateSpace, check, explore
from compose.check.to_prism import prism_by_places, prism_by_states
from compose.forecast.chain.absorb import absorb
from compose.forecast.chain.bell import until
from compose.forecast.chain.chain import chain
from compose.forecast.chances.chances import chances
from compose.net.net import Net
from tests.benchmarks.forecast_growth import CHANCES, PER_MINUTE
from tests.benchmarks.lantern_net import lantern_row
from tests.interpreter.sheets import library_game, net_in

LARGE = "14 against 14, 6 targets, 8 balls"
GAMES = ("heron-and-pike", "four-becks", "cairn-keepers")
MINUTES = 6
Answers = dict[str, tuple[float, float]]
BUILT, ODDS, MEAN, OVER = "states", "first end", "mean minutes", f"over by {MINUTES} min"
PROVED = "findings, all proved besides"


def main(rounds: int) -> None:
    """One table for each game, then the sums."""
    try:
        import stormpy  # type: ignore[import-untyped] # an optional tool
    except ImportError:
        sys.exit("stormpy is not installed")
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}, best of {rounds}")
    for name, net, constants in _cases():
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "game.sm"
            path.write_text(_text(net, constants), encoding="utf-8")
            theirs = [_model_checker(stormpy, path) for _ in range(rounds)]
        _table(name, [_here(net, constants) for _ in range(rounds)], theirs)


def _cases() -> Iterator[tuple[str, Net, Sequence[float]]]:
    large = lantern_row(14, 6, 8)
    yield LARGE, large, [PER_MINUTE * CHANCES[move.outcome] for move in large.transitions]
    for name in GAMES:
        net = net_in(library_game(name))
        yield name, net, chances(net, library.norms(), library.kit_names()).tolist()


def _text(net: Net, constants: Sequence[float]) -> str:
    if not net.reactions:
        return prism_by_places(net, constants)
    space = explore(net)
    assert isinstance(space, StateSpace)
    return prism_by_states(space, constants)


def _table(name: str, ours: list[Answers], theirs: list[Answers]) -> None:
    print(f"\n{name:<34} {'here':>15} {'s':>7}   {'model checker':>15} {'s':>7}")
    sums = [0.0, 0.0]
    for question in theirs[0]:
        mine, other = (min((r[question] for r in rounds), key=lambda a: a[1]) for rounds in (ours, theirs))
        print(f"  {question:<32} {mine[0]:>15.10f} {mine[1]:>7.3f}   {other[0]:>15.10f} {other[1]:>7.3f}")
        sums = [sums[0] + mine[1], sums[1] + other[1]]
    proved = min(each[PROVED][1] for each in ours)
    print(f"  {'all of these':<32} {'':>15} {sums[0]:>7.3f}   {'':>15} {sums[1]:>7.3f}")
    print(f"  {PROVED:<32} {ours[0][PROVED][0]:>15.0f} {proved:>7.3f}")


def _here(net: Net, constants: Sequence[float]) -> Answers:
    space, build_s = _timed(lambda: explore(net))
    assert isinstance(space, StateSpace)
    built, chain_s = _timed(lambda: chain(space, constants))
    free, free_s = _timed(lambda: absorb(built))
    limited, limited_s = _timed(lambda: until(built, MINUTES))
    checked, check_s = _timed(lambda: check(net))
    return {
        BUILT: (space.states, build_s + chain_s),
        ODDS: (float(free.by_end[0]), free_s),
        MEAN: (free.mean, 0.0),
        OVER: (1 - limited.running, limited_s),
        PROVED: (len(checked.findings), max(0.0, check_s - build_s)),
    }


def _model_checker(stormpy: Any, path: Path) -> Answers:
    program = stormpy.parse_prism_program(str(path))
    texts = ('P=? [F "end_1"]', 'R{"minutes"}=? [F "over"]', f'P=? [F<={MINUTES} "over"]')
    asked = stormpy.parse_properties(";".join(texts), program)
    model, build_s = _timed(lambda: stormpy.build_model(program, asked))
    start = model.initial_states[0]
    answers = [_timed(lambda: stormpy.model_checking(model, each).get_value(start)) for each in asked]  # noqa: B023
    return {BUILT: (model.nr_states, build_s), **dict(zip((ODDS, MEAN, OVER), answers, strict=True))}


def _timed(work: Callable[[], Any]) -> tuple[Any, float]:
    begun = time.process_time()
    result = work()
    return result, time.process_time() - begun


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 3)
