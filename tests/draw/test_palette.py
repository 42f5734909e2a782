"""Sides can be told apart in colour, by those who see fewer colours, and in a grey print."""

from __future__ import annotations

from itertools import combinations

from compose.draw.signs.palette import DARK, MIDDLE, NOBODY, STYLES, WARNING, WHITE, style_of


def linear(colour: str) -> tuple[float, float, float]:
    """Red, green and blue as amounts of light (sRGB, IEC 61966-2-1:1999)."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    r, g, b = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return r, g, b


def luminance(colour: str) -> float:
    r, g, b = linear(colour)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: str, other: str) -> float:
    """The contrast ratio of the Web Content Accessibility Guidelines 2.1 (W3C, 2018)."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_fills_differ_in_a_grey_print():
    for one, other in combinations(STYLES, 2):
        assert contrast(one.fill, other.fill) > 1.35, (one.shape, other.shape)


def test_fills_differ_for_those_who_see_no_red_or_no_green():
    """Without one kind of cone two colours are told apart by lightness and by blue against yellow."""
    for one, other in combinations(STYLES, 2):
        (r, g, b), (r2, g2, b2) = linear(one.fill), linear(other.fill)
        yellow, yellow2 = (r + g) / 2, (r2 + g2) / 2
        assert abs((b - yellow) - (b2 - yellow2)) > 0.12 or contrast(one.fill, other.fill) > 2.0


def test_shapes_and_marks_differ():
    assert len({style.shape for style in STYLES}) == len(STYLES)
    assert all(contrast(style.fill, style.mark) > 3 for style in STYLES)
    assert all(contrast(style.edge, WHITE) > 7 for style in STYLES)


def test_words_are_dark_on_every_ground():
    assert all(contrast(DARK, style.tint) > 12 for style in STYLES)
    assert contrast(MIDDLE, WHITE) > 4.5
    assert contrast(WARNING, WHITE) > 4.5


def test_sides_after_the_fourth_come_round_again():
    sides = tuple("abcdef")
    assert style_of("e", sides) == STYLES[0]
    assert style_of(None, sides) == NOBODY
