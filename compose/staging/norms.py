"""The norms seen for one class: a value by name and age, at the level of ability asked for.

The library gives figures by age band in whole years. A band's figure holds in the middle of the band
(6-7 covers the years from the sixth birthday to the eighth, so it holds at 7.0); between the middles
the value runs along a straight line, beyond the outermost middles it stays level. For pupils of
several ages it is the mean of that line over their years, every year counting alike.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Literal

from grammar.frozen import field, frozen
from library import Figure, Norms, Row, Source, Table

Level = Literal["low", "usual", "high"]
Ages = tuple[float, float]
LEVELS: tuple[Level, ...] = ("low", "usual", "high")
OTHER_END: Mapping[Level, Level] = {"low": "high", "usual": "usual", "high": "low"}


@frozen
class Reading:
    """A value taken from the norms, with all that stands behind it.

    `level` is the end of the figure that was read (not the ability asked for), `ages` the bands used,
    empty where the norm is the same for every age.
    """

    table: str
    name: str
    value: float
    unit: str
    level: Level
    ages: tuple[tuple[int, int], ...]
    sources: tuple[Source, ...]
    why: tuple[str, ...]

    @property
    def assumed(self) -> bool:
        """True where any part of the value is our own assumption."""
        return any(source.read == "assumption" for source in self.sources)


@frozen
class Ability:
    """The norms for a class whose ability is low, usual or high.

    An able class aims, moves and catches better: that is the lower end of the band for an error or a
    time, the upper end for a chance or a speed, as each table says; where ability has no part in a
    norm its usual figure stands. `instead` names tables to be read at an end of their own ("low" is
    then the smaller number), so that one assumption can be moved alone.
    """

    norms: Norms
    level: Level = "usual"
    instead: Mapping[str, Level] = field(factory=dict)

    def knows(self, table: str, name: str) -> bool:
        """True where the norms have that row."""
        return table in self.norms.tables and name in self.norms.tables[table].rows

    def read(self, table: str, name: str, ages: Ages) -> Reading:
        """The value for pupils of these ages; raises KeyError for a norm that the library does not have."""
        found = self.norms.tables[table]
        end = self.instead.get(table, end_of(found, self.level))
        rows = bands_used(found.rows[name], ages)
        value = mean_over_ages([(middle(row), at(row.figure, end)) for row in found.rows[name]], ages)
        bands = tuple(row.ages for row in rows if row.ages is not None)
        sources = tuple(dict.fromkeys(row.figure.source for row in rows))
        reasons = tuple(dict.fromkeys(row.figure.why for row in rows if row.figure.why))
        return Reading(table, name, value, found.unit, end, bands, sources, reasons)


def end_of(table: Table, level: Level) -> Level:
    """The end of a table's band at which a class of that ability is."""
    if table.better == "neither":
        return "usual"
    return OTHER_END[level] if table.better == "lower" else level


def at(figure: Figure, level: Level) -> float:
    """One of the three numbers of a figure."""
    return {"low": figure.low, "usual": figure.usual, "high": figure.high}[level]


def middle(row: Row) -> float:
    """The age in years at which a row's figure holds; 0 for a row that holds at every age."""
    return (row.ages[0] + row.ages[1] + 1) / 2 if row.ages else 0.0


def bands_used(rows: tuple[Row, ...], ages: Ages) -> tuple[Row, ...]:
    """The rows that have a part in the value for these ages."""
    start, stop = ages[0], ages[1] + 1
    middles = [middle(row) for row in rows]
    first = max((place for place, age in enumerate(middles) if age <= start), default=0)
    last = min((place for place, age in enumerate(middles) if age >= stop), default=len(rows) - 1)
    return rows[first : last + 1]


def mean_over_ages(points: list[tuple[float, float]], ages: Ages) -> float:
    """The mean of the broken line through (age, value) over these years, the last one to its end."""
    start, stop = ages[0], ages[1] + 1
    knots = sorted({start, stop, *(age for age, _ in points if start < age < stop)})
    heights = [along(points, age) for age in knots]
    slices = zip(pairwise(knots), pairwise(heights), strict=True)
    area = sum((right - left) * (first + last) / 2 for (left, right), (first, last) in slices)
    return area / (stop - start)


def along(points: list[tuple[float, float]], age: float) -> float:
    """The broken line through (age, value) at one age, level beyond both ends."""
    if age <= points[0][0]:
        return points[0][1]
    for (younger, before), (older, after) in pairwise(points):
        if age <= older:
            return before + (after - before) * (age - younger) / (older - younger)
    return points[-1][1]
