"""A plugin of pytest that goes through the collected tests in its own way: records what each touches, or tries mutants.

The tests are a seeded sample of the usual ones, for what matters is the first that notices. A mutant is tried in a
fork of this process, which has everything imported; where code that runs on loading is changed, in a new process.
"""

from __future__ import annotations

import gc
import json
import os
import pickle
import resource
import signal
import subprocess
import sys
import time
from collections import defaultdict
from contextlib import suppress
from importlib.machinery import SourceFileLoader
from random import Random
from typing import Any

import coverage
import pytest
from hypothesis import settings

from tests.mutation.chosen import COVERED, KEPT, Covered, chosen, known
from tests.mutation.mutants import ROOMS, ROOT, Mutant, files
from tests.mutation.swap import Living, load

CASES = {True: 2, False: 8}  # of one test, as it is recorded and as mutants are tried
EXAMPLES = int(os.environ.get("RULEWEAVE_EXAMPLES", "5"))  # of one property
DEAREST_S = 8  # a test that takes longer with recording is left out
BUDGET_S = 30  # processor time of one mutant
MOST_BYTES = 4 << 30  # of memory; a mutant that wants more is noticed
NOTICED, SURVIVED, UNDECIDED, ON_LOADING = 0, 3, 4, 5
TASK = "RULEWEAVE_MUTATION"  # record, or a file of mutants to try, or of one mutant to load
FRESH_FILES = 6  # of tests that a new process collects

task = os.environ[TASK]
recorder = coverage.Coverage(
    data_file=str(KEPT / "branches"), data_suffix=True, branch=True, config_file=False,
    source=[str(ROOT / folder) for folders in ROOMS.values() for folder in folders],
)  # fmt: skip
if task == "record":
    recorder.start()


class Slow(BaseException):
    """A test takes too long."""


def few_examples() -> None:
    settings.register_profile("mutants", parent=settings.get_profile("ruleweave"), max_examples=EXAMPLES,
                              derandomize=True, database=None)  # fmt: skip
    settings.load_profile("mutants")


def pytest_configure() -> None:
    few_examples()


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    cases = defaultdict[str, list[pytest.Item]](list)
    for item in items:
        cases[item.nodeid.split("[")[0]].append(item)
    most = CASES[task == "record"]
    drawn = {item.nodeid for name, each in cases.items() for item in Random(name).sample(each, min(most, len(each)))}
    items[:] = [item for item in items if item.nodeid in drawn]
    for item in items:
        own = getattr(getattr(item, "function", None), "_hypothesis_internal_use_settings", None)
        if own is not None:  # that many examples of its own, not those of the profile
            item.function._hypothesis_internal_use_settings = settings(  # type: ignore[attr-defined]
                own, max_examples=min(own.max_examples, EXAMPLES), derandomize=True, database=None
            )


class Reports:
    """Whether the last test failed."""

    def __init__(self) -> None:
        self.failed = False

    def pytest_runtest_logreport(self, report: Any) -> None:
        self.failed |= report.failed


def passes(item: pytest.Item, reports: Reports, limit_s: float) -> bool:
    """Run one test within a bounded processor time."""
    reports.failed = False

    def too_long(*_: object) -> None:
        raise Slow

    signal.signal(signal.SIGVTALRM, too_long)
    signal.setitimer(signal.ITIMER_VIRTUAL, limit_s)
    try:
        item.ihook.pytest_runtest_protocol(item=item, nextitem=None)
    except Slow:
        return False
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
    return not reports.failed


def pytest_collection_finish(session: pytest.Session) -> None:
    if session.testsfailed:
        finish(NOTICED, "collecting")


def pytest_runtestloop(session: pytest.Session) -> bool:
    reports = Reports()
    session.config.pluginmanager.register(reports)
    items = {item.nodeid: item for item in session.items}
    if task == "record":
        record(items, reports)
    elif task.endswith(".mutant"):
        try_one(pickle.loads((KEPT / task).read_bytes()), items, reports)
    else:
        mutants: list[Mutant] = pickle.loads((KEPT / task).read_bytes())
        living = warmed(items, reports)
        for mutant in mutants:
            try_in_fork(mutant, living, items, reports)
    return True


def record(items: dict[str, pytest.Item], reports: Reports) -> None:
    """Keep which lines of the rooms each test touches, and how long it takes."""
    seconds: dict[str, float] = {}
    for number, (name, item) in enumerate(items.items()):
        recorder.switch_context(name)
        begun = time.process_time()
        if passes(item, reports, DEAREST_S):
            seconds[name] = time.process_time() - begun
        print(number, len(items), name, seconds.get(name, "left out"), file=sys.__stderr__, flush=True)
    recorder.stop()
    recorder.save()
    lines = defaultdict[str, dict[str, int]](dict)
    data = recorder.get_data()
    for path in data.measured_files():
        short = os.path.relpath(path, ROOT)
        for line, tests in data.contexts_by_lineno(path).items():
            for test in tests:
                lines[test][short] = lines[test].get(short, 0) | 1 << max(line, 0)
    kept = known() | {name: Covered(each, lines[name]) for name, each in seconds.items()}
    COVERED.write_bytes(pickle.dumps(kept))


def warmed(items: dict[str, pytest.Item], reports: Reports) -> Living:
    """All modules loaded and the quickest test of each file run, so that forks need not do so."""
    load(path for room in ROOMS for path in files(room))
    slowest_first = sorted(known(), key=lambda name: -known()[name].seconds)
    quickest = {name.split("::")[0]: name for name in slowest_first}
    for name in quickest.values():
        if name in items:
            passes(items[name], reports, DEAREST_S)
    gc.collect()
    living = Living()
    gc.freeze()
    return living


def try_in_fork(mutant: Mutant, living: Living, items: dict[str, pytest.Item], reports: Reports) -> None:
    """Try a mutant in a child of this process, or where that cannot be in a new one, and keep what came of it."""
    begun = time.monotonic()
    outlet = KEPT / "said"
    outlet.unlink(missing_ok=True)
    sys.stdout.flush()
    child = os.fork()
    if not child:
        with suppress(BaseException):
            resource.setrlimit(resource.RLIMIT_CPU, (3 * BUDGET_S, 3 * BUDGET_S))
            resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))
            if not living.swap(ROOT / mutant.path, mutant.source()):
                os._exit(ON_LOADING)
            try_one(mutant, items, reports)
        os._exit(NOTICED)
    code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    if code == ON_LOADING:
        code = try_in_new_process(mutant)
    outcome = {SURVIVED: "survived", UNDECIDED: "undecided"}.get(code, "noticed")
    by = outlet.read_text() if outlet.exists() else f"exit {code}"
    told = {"room": mutant.room, "path": mutant.path, "operator": mutant.operator, "occurrence": mutant.occurrence,
            "line": mutant.line, "outcome": outcome, "by": by,
            "wall_s": round(time.monotonic() - begun, 1)}  # fmt: skip
    with (KEPT / "tried.jsonl").open("a", encoding="utf-8") as kept:
        kept.write(json.dumps(told) + "\n")


def try_one(mutant: Mutant, items: dict[str, pytest.Item], reports: Reports) -> None:
    """Run the tests that may notice a mutant, and end the process with what came of it."""
    begun = time.process_time()
    covered = known()
    for name in chosen(mutant, covered, items):
        if name not in items:
            continue
        if time.process_time() - begun > BUDGET_S:
            finish(UNDECIDED, name)
        if not passes(items[name], reports, 5 + 5 * covered[name].seconds if name in covered else DEAREST_S):
            finish(NOTICED, name)
    finish(SURVIVED, "")


def finish(code: int, by: str) -> None:
    if task != "record":
        (KEPT / "said").write_text(by)
        os._exit(code)


def try_in_new_process(mutant: Mutant) -> int:
    (KEPT / "one.mutant").write_bytes(pickle.dumps(mutant))
    asked = list(dict.fromkeys(name.split("::")[0] for name in chosen(mutant, known())))[:FRESH_FILES]
    if not asked:
        return SURVIVED
    call = [sys.executable, "-m", "pytest", "-p", "tests.mutation.trial", "-p", "no:cacheprovider", *asked]
    with suppress(subprocess.TimeoutExpired):
        return subprocess.run(call, env=os.environ | {TASK: "one.mutant"}, cwd=ROOT, check=False,
                              timeout=15 * BUDGET_S, stdout=subprocess.DEVNULL,
                              stderr=subprocess.DEVNULL).returncode  # fmt: skip
    return NOTICED


def load_mutant(mutant: Mutant) -> None:
    """Have the changed text of a module loaded in the place of its own."""
    as_it_is = SourceFileLoader.get_code
    path = str(ROOT / mutant.path)

    def get_code(loader: SourceFileLoader, name: str) -> Any:
        return compile(mutant.source(), path, "exec") if loader.path == path else as_it_is(loader, name)

    SourceFileLoader.get_code = get_code  # type: ignore[method-assign,assignment]


if task.endswith(".mutant"):
    load_mutant(pickle.loads((KEPT / task).read_bytes()))
