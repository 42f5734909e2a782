"""All outputs say the same of a game for a class, and all refuse the same classes in the same words.

Here a sample of the day; all cases are in tests/benchmarks/ten_numbers.txt.
"""

from __future__ import annotations

import json
import random
import sys
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

import pytest

from compose.telling.cautions import cautions_told
from compose.terminal.staging_json import staging_json
from tests.seed import SEED
from tests.staging.outputs_read import in_json
from tests.staging.outputs_shown import differing, shown
from tests.staging.ten_cases import CASES, CLASS, PUPILS, Case, expected, staging_of

sys.path.insert(0, str(Path(__file__).parents[1] / "terminal"))
from running import COMMANDS, run

SAMPLE, REFUSED = 10, 3
EVERY = tuple(Case(name, modifiers, pupils) for name, modifiers in CASES for pupils in PUPILS)
TAKEN = {name: {each.name for each in command.params} for name, command in sorted(COMMANDS.items())}
FOR_A_CLASS = tuple(name for name, taken in TAKEN.items() if {"class_name", "name"} <= taken)
OF_CLASS = {"teams", "over", "odd", "courts", "court_m", "balls", "targets", "stand_ins", "play_min"}
OF_LESSON = {"rounds", "warm_rounds"}
SHOWN_BY = {
    "card": OF_CLASS | {"waiting", "turns"},
    "forecast": OF_CLASS | OF_LESSON | {"turns", "active"},
    "JSON": OF_CLASS | {"waiting", "turns"},
    "fit": OF_CLASS | OF_LESSON,
    "booklet": OF_CLASS,
    "page": OF_CLASS,
    "lesson": OF_CLASS | {"warm_rounds", "waiting", "turns", "active"},
    "plan": {"teams", "courts", "court_m"},
}


@pytest.mark.parametrize("case", random.Random(SEED).sample(EVERY, SAMPLE), ids=str)
def test_every_output_says_the_same(case: Case) -> None:
    assert differing(case) == []


@pytest.mark.parametrize("case", [Case("toll-stone", (), 27), Case("lantern-row", (), 24)], ids=str)
def test_every_output_shows_its_numbers(case: Case) -> None:
    """So that a reader that finds nothing is no proof that nothing differs."""
    said = {output: set(numbers) for output, numbers, _ in shown(case, staging_of(case))}
    assert {output: wanted - said[output] for output, wanted in SHOWN_BY.items() if wanted - said[output]} == {}


def test_suggest_says_the_same(tmp_path: Path) -> None:
    case = Case("toll-stone", (), 27)
    group = tmp_path / "ten.rules"
    group.write_text(CLASS.format(pupils=case.pupils), encoding="utf-8")
    told = json.loads(run("suggest", case.name, "--class", group, "--tries", "1", "--json").stdout)
    staging = staging_of(case)
    said, wanted = in_json(told, staging), expected(staging, None)
    assert {key: value for key, value in said.items() if value != wanted[key]} == {}


def test_json_counts_the_benches_that_no_kit_lists_and_has_the_cautions() -> None:
    for case, benches in ((Case("harvest-kettles", (), 24), 3), (Case("lantern-row", ("shorter court",), 24), 0)):
        told = staging_json(staging_of(case))
        assert told["benches"] == benches
        assert told["cautions"] and tuple(told["cautions"]) == cautions_told(staging_of(case).cautions)
    assert "Less room: no running at full speed, and aim lower." in told["cautions"]


def test_kit_in_all_is_what_lies_on_all_floors() -> None:
    """Counted thing by thing on the floors, which know nothing of the kit's lines in all."""
    for case in (Case("toll-stone", (), 27), Case("beck-gates", (), 24), Case("homestead", (), 27)):
        staging = staging_of(case)
        lying = [item.category for court in staging.courts for item in court.floor.items]
        numbers = expected(staging, None)
        assert (lying.count("ball"), lying.count("target")) == (numbers["balls"], numbers["targets"])
        assert lying.count("player") + staging.teams.over == case.pupils


def refused() -> Iterator[Case]:
    """Classes that are refused, in an order that the seed decides."""
    drawn = random.Random(SEED).sample(EVERY, len(EVERY))
    return (case for case in drawn if not case.modifiers and staging_of(case).refused)


@pytest.mark.parametrize("case", tuple(islice(refused(), REFUSED)), ids=str)
def test_all_refuse_the_same_classes(case: Case, tmp_path: Path) -> None:
    group = tmp_path / "ten.rules"
    group.write_text(CLASS.format(pupils=case.pupils), encoding="utf-8")
    (reason,) = (each.title for each in staging_of(case).refused)
    assert len(FOR_A_CLASS) > 4
    for command in FOR_A_CLASS:
        wishes = ("--tries", "1") if command == "suggest" else ()
        told = run(command, case.name, "--class", group, *wishes)
        flat = " ".join(told.output.split())
        if command == "suggest":  # it looks for what would let them play
            continue
        assert told.exit_code == 2, command
        assert reason in flat, (command, told.output)
    for command, more in (("lesson", ()), ("booklet", ("--out", tmp_path / "b.pdf"))):
        told = run(command, case.name, "--class", group, *more)
        assert told.exit_code == 2 and reason in " ".join(told.output.split()), command


def test_too_small_a_floor_is_found_by_all(tmp_path: Path) -> None:
    """27 pupils on 8 m by 4 m: nobody refuses it, and everybody says that they find no place."""
    group = tmp_path / "ten.rules"
    group.write_text(CLASS.format(pupils=27), encoding="utf-8")
    small = "court of this size, length 8, width 4"
    case = Case("lantern-row", (small,), 27)
    found = [each.title for each in staging_of(case).findings if each.code == "P-no-room"]
    assert found
    for command in FOR_A_CLASS:
        if command == "suggest":
            continue
        told = run(command, case.name, "--with", small, "--class", group, code=1)
        assert all(title in " ".join(told.output.split()) for title in found), (command, told.output)
