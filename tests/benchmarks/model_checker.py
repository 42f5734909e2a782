"""Side by side in one run: the large lantern game here and in a probabilistic model checker.

Run with `python -m tests.benchmarks.model_checker`; needs stormpy (not among the test requirements).
Prints the numbers of both and the seconds for the same four questions; judges nothing.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from compose.check import StateSpace, explore
from compose.forecast.absorb import absorb
from compose.forecast.bell import until
from compose.forecast.chain import chain
from tests.benchmarks.forecast_growth import CHANCES, PER_MINUTE
from tests.benchmarks.lantern_net import lantern_row
from tests.benchmarks.prism_text import prism_text

MINUTES = 6
ROUNDS = 3
Answers = dict[str, tuple[float, float]]


def main() -> None:
    """The best of a few rounds for each."""
    net = lantern_row(14, 6, 8)
    constants = [PER_MINUTE * CHANCES[move.outcome] for move in net.transitions]
    try:
        import stormpy  # type: ignore[import-untyped] # an optional tool
    except ImportError:
        sys.exit("stormpy is not installed")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "lantern.sm"
        path.write_text(prism_text(net, constants))
        theirs = [_model_checker(stormpy, path, [f'"end{n}"' for n in range(len(net.ends))]) for _ in range(ROUNDS)]
    ours = [_here(net, constants) for _ in range(ROUNDS)]
    print(f"{'':<28} {'here':>15} {'s':>7}   {'model checker':>15} {'s':>7}")
    for question in ours[0]:
        mine, other = (min((r[question] for r in rounds), key=lambda a: a[1]) for rounds in (ours, theirs))
        print(f"{question:<28} {mine[0]:>15.10f} {mine[1]:>7.3f}   {other[0]:>15.10f} {other[1]:>7.3f}")


def _here(net: Any, constants: list[float]) -> Answers:
    space, build_s = _timed(lambda: explore(net))
    assert isinstance(space, StateSpace)
    built, chain_s = _timed(lambda: chain(space, constants))
    free, free_s = _timed(lambda: absorb(built))
    limited, limited_s = _timed(lambda: until(built, MINUTES))
    return {
        "states": (space.states, build_s + chain_s),
        "first end (with the mean)": (float(free.by_end[0]), free_s),
        "mean minutes": (free.mean, 0.0),
        f"over by {MINUTES} min": (1 - limited.running, limited_s),
    }


def _model_checker(stormpy: Any, path: Path, ends: list[str]) -> Answers:
    program = stormpy.parse_prism_program(str(path), prism_compatibility=True)
    over = " | ".join(ends)
    texts = (f"P=? [F {ends[0]}]", f'R{{"time"}}=? [F ({over})]', f"P=? [F<={MINUTES} ({over})]")
    asked = stormpy.parse_properties(";".join(texts), program)
    model, build_s = _timed(lambda: stormpy.build_model(program, asked))
    start = model.initial_states[0]
    answers = [_timed(lambda: stormpy.model_checking(model, each).get_value(start)) for each in asked]  # noqa: B023
    names = ("first end (with the mean)", "mean minutes", f"over by {MINUTES} min")
    return {"states": (model.nr_states, build_s), **dict(zip(names, answers, strict=True))}


def _timed(work: Callable[[], Any]) -> tuple[Any, float]:
    begun = time.perf_counter()
    result = work()
    return result, time.perf_counter() - begun


if __name__ == "__main__":
    main()
