"""The data files: complete, sourced, consistent, found wherever the package lies."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import attrs
import pytest

import library
from library import Figure, Hall, Table

HERE = Path(library.__file__).parent
EVERY_AGE = (6, 18)


def figures_in(value: object) -> Iterator[Figure]:
    """Every figure inside a record, whatever holds it."""
    if isinstance(value, Figure):
        yield value
    elif attrs.has(type(value)):
        for part in attrs.asdict(value, recurse=False).values():  # type: ignore[arg-type]  # any record
            yield from figures_in(part)
    elif isinstance(value, tuple):
        for part in value:
            yield from figures_in(part)
    elif hasattr(value, "values"):
        for part in value.values():
            yield from figures_in(part)


def all_figures() -> list[Figure]:
    return [
        figure
        for whole in (library.kit_catalogue(), library.halls(), library.courts(), library.norms())
        for figure in figures_in(whole)
    ]


def sources_named_in_files() -> set[str]:
    """The keys that stand after `source =` in the files themselves."""
    text = "\n".join(path.read_text(encoding="utf-8") for path in HERE.glob("*/*.toml"))
    return {part.split('"')[1] for part in text.split("source = ")[1:]}


def test_every_source_is_used_and_every_assumption_says_why() -> None:
    assert sources_named_in_files() == set(library.sources())
    figures = all_figures()
    assert len(figures) > 300
    for figure in figures:
        assert figure.low <= figure.usual <= figure.high
        assert figure.why or figure.source.read != "assumption"


def test_sources_say_how_far_they_were_checked() -> None:
    for source in library.sources().values():
        assert source.issuer or source.read != "issuer's text", source.key
        assert source.read in str(source)


def test_kit_has_every_category_and_no_name_twice() -> None:
    catalogue = library.kit_catalogue()
    count = dict.fromkeys(("ball", "target", "ring", "body", "furniture"), 0)
    for item in catalogue.values():
        count[item.category] += 1
        assert library.kit_names()[item.plural] is item
        assert (item.category == "ball") == bool(item.may), item.name
    assert min(count.values()) >= 4
    assert count["ball"] >= 20


def test_sizes_of_kit_are_those_of_things_in_a_hall() -> None:
    for item in library.kit_catalogue().values():
        width, height = item.size_m
        assert width < 3.6 and height < 2.5, item.name
        if item.category == "ball":
            assert 0.06 <= width <= 0.6, item.name
        if item.category in ("target", "ring", "ball"):
            assert width > 0 and height > 0, item.name


def test_only_soft_balls_lack_a_word_on_people() -> None:
    for item in library.kit_catalogue().values():
        if item.category == "ball" and not item.soft:
            assert item.caution, item.name


def inside(hall: Hall, x: float, y: float, length: float, width: float) -> bool:
    """The rectangle with its south-west corner at x, y lies in the hall."""
    return x >= 0 and y >= 0 and x + length <= hall.length_m.usual and y + width <= hall.width_m.usual


def test_halls_hold_their_doors_obstacles_and_lines() -> None:
    halls = library.halls()
    assert len(halls) >= 6
    assert sum(hall.invented for hall in halls.values()) == 2
    for hall in halls.values():
        assert hall.doors, hall.name
        for door in hall.doors:
            wall = hall.length_m if door.side in ("north", "south") else hall.width_m
            assert door.width_m / 2 <= door.at_m <= wall.usual - door.width_m / 2, hall.name
        for thing in hall.obstacles:
            assert inside(hall, thing.x_m, thing.y_m, thing.length_m, thing.width_m), (hall.name, thing.name)
        for marking in hall.markings:
            court = library.courts()[marking.court]
            long, wide = court.length_m.usual, court.width_m.usual
            along, across = (wide, long) if marking.turned else (long, wide)
            assert inside(hall, marking.x_m - along / 2, marking.y_m - across / 2, along, across), hall.name


def test_shares_and_chances_lie_between_0_and_1() -> None:
    for table in library.norms().tables.values():
        if table.unit in ("chance", "share"):
            assert all(figure.low >= 0 and figure.high <= 1 for figure in figures_in(table)), table.name


def test_ages_are_covered_without_gaps() -> None:
    for table in library.norms().tables.values():
        for name, rows in table.rows.items():
            bands = [row.ages for row in rows if row.ages]
            if bands:
                assert (bands[0][0], bands[-1][1]) == EVERY_AGE, (table.name, name)
                assert all(older[0] == younger[1] + 1 for younger, older in pairwise(bands)), (
                    table.name,
                    name,
                )


def steps(table: Table) -> list[tuple[float, float]]:
    """Each usual value with the next older band's."""
    return [
        (younger.figure.usual, older.figure.usual) for rows in table.rows.values() for younger, older in pairwise(rows)
    ]


def test_older_pupils_do_better() -> None:
    tables = library.norms().tables
    for table in tables.values():
        if table.better == "lower":
            assert all(older <= younger for younger, older in steps(table)), table.name
        if table.better == "higher":
            assert all(older >= younger for younger, older in steps(table)), table.name
    assert len(steps(tables["aim across"])) == 24


def test_larger_balls_are_caught_more() -> None:
    for name in ("catch pass", "catch throw"):
        rows = library.norms().tables[name].rows
        for small, middle, large in zip(rows["small"], rows["middle"], rows["large"], strict=True):
            assert small.figure.usual < middle.figure.usual < large.figure.usual


def test_running_with_turns_agrees_with_the_shuttle_run() -> None:
    """50 m in 22.1 s and 23.2 s: the pupils of 7 to 14 run 2.16 to 2.26 m/s."""
    rows = library.norms().tables["running speed"].rows["with turns"]
    middle = [row.figure.usual for row in rows if row.ages and 8 <= row.ages[0] <= 12]
    assert 50 / 23.2 - 0.05 < sum(middle) / len(middle) < 50 / 22.1 + 0.05


def test_rule_files_come_sorted() -> None:
    for paths in (library.game_paths(), library.modifier_paths()):
        assert list(paths) == sorted(paths)
        assert all(path.suffix == ".rules" and path.is_file() for path in paths)


def run_python(code: str, folder: Path) -> str:
    """What a fresh interpreter prints that finds its modules in `folder` first."""
    environment = {**os.environ, "PYTHONPATH": str(HERE.parent)}  # for what the library itself imports
    words = [sys.executable, "-c", code]
    done = subprocess.run(words, cwd=folder, env=environment, capture_output=True, text=True, check=True, timeout=60)
    return done.stdout.strip()


def test_the_library_is_found_wherever_it_is_installed(tmp_path: Path) -> None:
    shutil.copytree(HERE, tmp_path / "library")
    code = "import library; print(library.__file__, len(library.kit_catalogue()), len(library.halls()), sep='\\n')"
    place, kit, halls = run_python(code, tmp_path).splitlines()
    assert Path(place).parent == tmp_path / "library"
    assert (int(kit), int(halls)) == (len(library.kit_catalogue()), len(library.halls()))


def test_importing_the_package_reads_nothing() -> None:
    code = "import library, sys; print({'attrs', 'tomllib', 'library.load'} & set(sys.modules))"
    assert run_python(code, HERE.parent) == "set()"


def test_an_unknown_name_is_refused() -> None:
    with pytest.raises(AttributeError, match="no 'balls'"):
        library.__getattr__("balls")
