"""Patterns keep their gap and their bounds whenever they say that nothing is missing."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from compose.staging.floor.ground import Region
from compose.staging.floor.spread import room, spread
from compose.staging.floor.values import Rectangle
from grammar.core.values import SideId, Spread

EAST, WEST = SideId("east"), SideId("west")
PATTERNS = (None, *Spread)
COURT = Rectangle(0.0, 0.0, 30.0, 30.0)
areas = st.builds(
    lambda x, y, length, width: Rectangle(x, y, x + length, y + width),
    st.floats(0, 10),
    st.floats(0, 10),
    st.floats(1, 20),
    st.floats(1, 20),
)


@given(
    areas,
    st.integers(0, 24),
    st.tuples(st.floats(0.05, 1.0), st.floats(0.05, 0.5)),
    st.sampled_from(PATTERNS),
    st.sampled_from((1, -1)),
)
def test_nothing_missing_means_gaps_and_bounds_are_kept(box, count, sizes, how, facing):
    size, gap = sizes
    points, missing = spread(Region(box, EAST, facing), count, size, gap, how)
    assert missing >= 0
    if missing == 0:
        assert len(points) == count
        assert all(box.holds(x, y, size / 2 - 1e-6) for x, y in points)
        assert all(hypot(a - c, b - d) >= size + gap - 1e-6 for (a, b), (c, d) in combinations(points, 2))


@given(st.integers(1, 30), st.floats(0.05, 1.0), st.floats(0.05, 0.5), st.floats(2, 30))
def test_a_row_on_a_line_lacks_what_it_lacks(count, size, gap, width):
    line = Region(Rectangle(1.0, 0.0, 1.0, width), EAST, 1, "across")
    points, missing = spread(line, count, size, gap, None)
    assert missing == pytest.approx(max(0.0, count * size + (count - 1) * gap - width))
    if missing == 0:
        assert all(size / 2 - 1e-9 <= y <= width - size / 2 + 1e-9 and x == 1.0 for x, y in points)
        ys = [y for _x, y in points]
        assert all(b - a >= size + gap - 1e-9 for a, b in pairwise(ys))


def test_an_even_row_has_half_a_gap_at_its_ends():
    line = Region(Rectangle(0.0, 0.0, 0.0, 9.0), EAST, 1, "across")
    assert spread(line, 3, 0.1, 0.15, Spread.EVENLY) == ([(0.0, 1.5), (0.0, 4.5), (0.0, 7.5)], 0.0)


def test_a_triangle_points_to_the_middle_of_the_court():
    points, missing = spread(Region(Rectangle(0, 0, 6, 6), EAST, 1), 6, 0.1, 0.2, Spread.TRIANGLE)
    assert missing == 0
    assert sum(1 for x, _y in points if x == max(x for x, _y in points)) == 1
    assert sum(1 for x, _y in points if x == min(x for x, _y in points)) == 3


def test_a_line_has_the_breadth_of_the_thing_inside_the_court():
    back = Region(Rectangle(30.0, 0.0, 30.0, 30.0), WEST, -1, "across")
    assert room(back, 0.1, 0.1, COURT) == Rectangle(29.85, 0.05, 29.85, 29.95)
    assert room(back, 0.4, 0.4, COURT) == Rectangle(29.8, 0.2, 29.8, 29.8)
    top = Region(Rectangle(0.0, 30.0, 30.0, 30.0), None, 1, "along", -1)
    assert room(top, 0.4, 0.4, COURT) == Rectangle(0.2, 29.8, 29.8, 29.8)
