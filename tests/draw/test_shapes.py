"""Patterns stay within their rectangle, words are no wider than thought."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from compose.draw.card.fonts import BOLD, PLAIN, load_fonts
from compose.draw.signs.labelling import Clearings, box_of, gap
from compose.draw.signs.lettering import shortened, width_em
from compose.draw.signs.shapes import Ink, Label, Lines, Polygon, arrow, dashed, hatch
from compose.staging.floor.values import Rectangle

boxes = st.builds(
    lambda x, y, length, width: Rectangle(x, y, x + length, y + width),
    st.floats(-5, 5),
    st.floats(-5, 5),
    st.floats(0.2, 20),
    st.floats(0.2, 20),
)


@given(boxes, st.floats(0.1, 3), st.booleans())
def test_a_hatch_stays_within_its_rectangle(box, step, rising):
    for run in hatch(box, step, Ink(stroke="#000000"), rising).runs:
        assert all(box.grown(1e-6).holds(x, y) for x, y in run)


@given(boxes, st.floats(0.1, 3))
def test_dashes_stay_within_their_rectangle(box, step):
    for run in dashed(box, step, Ink(stroke="#000000")).runs:
        assert all(box.grown(1e-6).holds(x, y) for x, y in run)


def test_an_arrow_ends_where_it_points():
    line, head = arrow((0.0, 0.0), (3.0, 4.0), 1.0, Ink(stroke="#000000", width_m=0.1))
    assert isinstance(line, Lines) and isinstance(head, Polygon)
    assert head.points[0] == (3.0, 4.0)
    assert line.runs[0][1] == pytest.approx((2.4, 3.2))


@given(st.text(st.characters(min_codepoint=32, max_codepoint=0x17F), max_size=40), st.booleans())
def test_letters_are_no_wider_than_thought(text, bold):
    from reportlab.pdfbase.pdfmetrics import stringWidth

    known = load_fonts()
    printable = "".join(letter for letter in text if ord(letter) in known)
    assert stringWidth(printable, BOLD if bold else PLAIN, 1.0) <= width_em(printable, bold) + 1e-6


@given(st.text("abc im WM", max_size=40), st.floats(1.0, 20.0))
def test_shortened_words_fit(text, room):
    assert width_em(shortened(text, 1.0, room)) <= max(room, width_em("…"))


def test_a_label_goes_where_it_is_clear():
    clearings = Clearings([Rectangle(0, 0, 10, 1)])
    over, beside = Label(5, 0.2, "name", 0.5, "#000000", "middle"), Label(5, 3, "name", 0.5, "#000000", "middle")
    assert clearings.place([over, beside], 0.2) == beside
    assert clearings.place([over, beside], 0.2) != beside or gap(box_of(beside), box_of(beside)) < 0
    assert clearings.place([over], 0.2, least=0.0) is None
