"""The norms seen for a class: ages between the bands, the level of ability, what stands behind a value."""

from __future__ import annotations

from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

import library
from compose.staging.norms import Ability, Level, along, mean_over_ages
from library import Figure, Norms, Row, Source, Table

OURS = Source("assumption", "ours", "", None, "", "assumption")
READ = Source("measured", "a study", "an institute", 2001, "table 1", "issuer's text")


def table(better: str = "lower") -> Norms:
    """A norm of 10 at 6-7 (middle 7.0), 6 at 8-9 (9.0) and 4 at 10-13 (12.0); 2 below, 3 above."""
    values = {(6, 7): (10.0, OURS), (8, 9): (6.0, READ), (10, 13): (4.0, READ)}
    rows = tuple(
        Row(ages, Figure(value - 2, value, value + 3, source, "because")) for ages, (value, source) in values.items()
    )
    same = (Row(None, Figure(1.0, 2.0, 3.0, OURS, "so")),)
    return Norms({"aim across": Table("aim across", "", "degrees", better, {"throw": rows, "flat": same})})


@pytest.mark.parametrize(
    ("first", "last", "value"),
    [
        (6, 7, (10 + (10 + 8) / 2) / 2),  # level to 7.0, then down to 8 at the eighth birthday
        (8, 9, ((8 + 6) / 2 + (6 + 16 / 3) / 2) / 2),
        (12, 13, 4.0),  # past the last middle: level
        (3, 4, 10.0),
        (7, 8, 8.0),  # from 7.0 to 9.0 along one line
    ],
)
def test_ages_between_the_middles_run_along_a_line(first: float, last: float, value: float) -> None:
    assert isclose(Ability(table()).read("aim across", "throw", (first, last)).value, value)


@given(st.integers(5, 17), st.integers(0, 8))
def test_the_mean_over_ages_is_the_integral(first: int, more: int) -> None:
    points = [(7.0, 10.0), (9.0, 6.0), (12.0, 4.0), (15.0, 5.0)]
    knots = [age for age, _ in points if first < age < first + more + 1]
    area = quad(lambda age: along(points, age), first, first + more + 1, points=knots or None)[0]
    assert isclose(mean_over_ages(points, (first, first + more)), area / (more + 1), rel_tol=1e-9)


@pytest.mark.parametrize(
    ("better", "level", "value"),
    [
        ("lower", "high", 2.0),
        ("lower", "low", 7.0),
        ("lower", "usual", 4.0),
        ("higher", "high", 7.0),
        ("higher", "low", 2.0),
        ("neither", "low", 4.0),
        ("neither", "high", 4.0),
    ],
)
def test_an_able_class_is_at_the_better_end(better: str, level: Level, value: float) -> None:
    assert Ability(table(better), level).read("aim across", "throw", (13, 14)).value == value


def test_one_norm_can_be_moved_alone() -> None:
    moved = Ability(table("neither"), "low", {"aim across": "high"})
    assert moved.read("aim across", "throw", (13, 14)).value == 7.0


def test_a_reading_names_the_bands_and_sources_it_used() -> None:
    old = Ability(table()).read("aim across", "throw", (13, 14))
    assert (old.ages, old.sources, old.assumed) == (((10, 13),), (READ,), False)
    mixed = Ability(table()).read("aim across", "throw", (7, 8))
    assert (mixed.ages, mixed.sources, mixed.assumed) == (((6, 7), (8, 9)), (OURS, READ), True)
    assert Ability(table()).read("aim across", "flat", (7, 8)).ages == ()


def test_bands_without_a_part_in_the_value_are_not_named() -> None:
    """Changing a band that is not named leaves the value alone; changing a named one does not."""
    ability = Ability(table())
    for first in range(5, 14):
        reading = ability.read("aim across", "throw", (first, first))
        for row in table().tables["aim across"].rows["throw"]:
            rows = [(7.0, 10.0), (9.0, 6.0), (12.0, 4.0)]
            assert row.ages is not None
            place = {(6, 7): 0, (8, 9): 1, (10, 13): 2}[row.ages]
            rows[place] = (rows[place][0], rows[place][1] + 1)
            changed = not isclose(mean_over_ages(rows, (first, first)), reading.value)
            assert changed == (row.ages in reading.ages), (first, row.ages)


def test_every_norm_of_the_library_can_be_read_at_every_age() -> None:
    norms = library.norms()
    for level in ("low", "usual", "high"):
        for name, found in norms.tables.items():
            for row, rows in found.rows.items():
                value = Ability(norms, level).read(name, row, (6, 16)).value
                assert min(r.figure.low for r in rows) <= value <= max(r.figure.high for r in rows)


def test_a_norm_that_is_not_there_is_our_bug() -> None:
    with pytest.raises(KeyError):
        Ability(library.norms()).read("aim across", "juggle", (8, 9))
    assert not Ability(library.norms()).knows("aim across", "juggle")
