"""What all tests share: how many examples Hypothesis tries, and how pinned outputs are written anew."""

from __future__ import annotations

import os
from collections import defaultdict
from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.seed import SEED

WHOLE = "RULEWEAVE_WHOLE"  # set, it has every case of every test run
USUAL_EXAMPLES = 25 if WHOLE in os.environ else 15  # of one property; each run draws others

settings.register_profile(
    "ruleweave",
    max_examples=int(os.environ.get("RULEWEAVE_EXAMPLES", USUAL_EXAMPLES)),
    deadline=None,
    phases=[phase for phase in Phase if phase is not Phase.explain],
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)
settings.load_profile("ruleweave")


MOST_EXAMPLES = 40  # of one property that asks for more of them


def pytest_report_header() -> str:
    return "every case of every test" if WHOLE in os.environ else f"seed {SEED}: a sample of the cases of dear tests"


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave a seeded sample of the cases of a test whose cases are many and dear, which `sample(n)` marks.

    Tests of one file with the same cases get the same of them, so that what they share is worked out once. The cases
    that `whole` names by their ids are dearer than all they add: they wait for a run of every case.
    """
    named = config.getoption("keyword") or any("[" in each for each in config.args)
    if WHOLE in os.environ or config.getoption("--reset") or named:
        return
    for item in items:
        _with_few_examples(item)
    cases = defaultdict[str, list[pytest.Item]](list)
    for item in items:
        dearest = item.get_closest_marker("whole")
        if dearest and any(item.name.endswith(f"[{case}]") for case in dearest.args):
            continue
        cases[item.nodeid.split("[")[0]].append(item)
    drawn: set[str] = set()
    for name, each in cases.items():
        mark = each[0].get_closest_marker("sample")
        most = min(mark.args[0], len(each)) if mark else len(each)
        order = Random(f"{SEED} {name.split('::')[0]} {[item.name.partition('[')[2] for item in each]}")
        drawn |= {item.nodeid for item in order.sample(each, most)}
    config.hook.pytest_deselected(items=[item for item in items if item.nodeid not in drawn])
    items[:] = [item for item in items if item.nodeid in drawn]


def _with_few_examples(item: pytest.Item) -> None:
    own = getattr(getattr(item, "function", None), "_hypothesis_internal_use_settings", None)
    if own is not None and own.max_examples > MOST_EXAMPLES:
        item.function._hypothesis_internal_use_settings = settings(own, max_examples=MOST_EXAMPLES)  # type: ignore


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--reset", action="store_true", help="Write the pinned outputs anew; read the difference.")


@pytest.fixture
def pinned(request: pytest.FixtureRequest) -> Pinned:
    """Compares an output with the file that pins it, or writes that file with --reset."""
    return Pinned(bool(request.config.getoption("--reset")))


class Pinned:
    """Calling it asserts that a text is what its file says."""

    def __init__(self, reset: bool) -> None:
        self._reset = reset

    def __call__(self, text: str, path: Path) -> None:
        if self._reset:
            path.write_text(text, encoding="utf-8")
        assert path.exists(), f"{path.name} is missing; write it with --reset"
        assert text == path.read_text(encoding="utf-8")
