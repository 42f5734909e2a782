"""The PDF is read back: one page, every word there and inside the page, fonts embedded, the same bytes."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from attrs import evolve
from drawn_games import NAMES, card_for, lanterns, library_game
from pypdf import PdfReader

from compose.draw.card.card import CardNotes
from compose.draw.card.pdf import MARGIN_PT, PAPERS_PT, pdf_of
from grammar.finding import Severity
from library.load import halls, kit_catalogue

NOTES = CardNotes(
    modifiers=(("kick instead", "every overarm throw is a kick"), ("add balls", "2 more foam balls")),
    known=(
        "Every round can end and each side can win (proved).",
        "About 4.6 minutes to a round, 4 in 5 of them over before the bell.",
    ),
    lineage=("Base", "kick instead", "add balls"),
)


def card(name, notes=NOTES, hall=None):
    game = library_game(name)
    return card_for(game, notes, hall=halls()[hall] if hall else None, catalogue=kit_catalogue())


def read(made, paper="A4"):
    outcome = pdf_of(made, paper)
    assert outcome.value is not None, outcome.findings
    return PdfReader(BytesIO(outcome.value))


def squeezed(text):
    """The text without any spaces: line breaks of the page may fall anywhere."""
    return re.sub(r"\s+", "", text)


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper", PAPERS_PT)
def test_one_page_with_every_word(name, paper):
    made = card(name)
    reader = read(made, paper)
    assert len(reader.pages) == 1
    page = squeezed(reader.pages[0].extract_text())
    assert squeezed(made.title) in page
    assert squeezed(made.about) in page
    for label, value in made.facts:
        assert squeezed(label + value) in page
    for part in made.sections:
        assert squeezed(part.heading) in page
        for line in part.lines:
            assert squeezed(line) in page
    for line in made.footer:
        assert squeezed(line) in page


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper", PAPERS_PT)
def test_nothing_lies_outside_the_margins_or_over_the_footer(name, paper):
    wide, high = PAPERS_PT[paper]
    places = []

    def visit(text, current, matrix, _font, size):
        if text.strip():
            x = current[0] * matrix[4] + current[2] * matrix[5] + current[4]
            y = current[1] * matrix[4] + current[3] * matrix[5] + current[5]
            places.append((x, y, size))

    read(card(name, hall="Fellgate school sports hall"), paper).pages[0].extract_text(visitor_text=visit)
    assert places
    for x, y, _size in places:
        assert MARGIN_PT - 1 <= x <= wide - MARGIN_PT
        assert MARGIN_PT - 1 <= y <= high - MARGIN_PT


def test_title_author_language_and_fonts():
    reader = read(card("lantern-row"))
    assert reader.metadata.title == "Lantern Row"
    assert reader.metadata.author == "Tarn Valley schools (invented)"
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"
    fonts = reader.pages[0]["/Resources"]["/Font"]
    used = [fonts[key].get_object() for key in fonts]
    embedded = [font for font in used if "/FontDescriptor" in font]
    assert len(embedded) >= 3
    assert all("/FontFile2" in font["/FontDescriptor"] for font in embedded)


def test_the_same_card_gives_the_same_bytes():
    assert pdf_of(card("heron-and-pike")).value == pdf_of(card("heron-and-pike")).value


def test_a_card_too_long_says_so():
    many = "\n".join(
        f'"Rule {number}: mind the people beside you and behind you at all times, please."' for number in range(120)
    )
    game = lanterns(care=many)
    outcome = pdf_of(card_for(game))
    assert outcome.value is None
    assert outcome.findings[0].code == "D-card-full"
    assert outcome.findings[0].severity is Severity.ERROR
    assert dict(outcome.findings[0].numbers)["short_cm"] > 0


def test_a_long_card_gets_smaller_letters_but_keeps_all():
    many = "\n".join(f'"Rule {number}: mind the people beside you."' for number in range(14))
    game = lanterns(care=many)
    reader = read(card_for(game))
    assert len(reader.pages) == 1
    assert "Rule13:mindthepeoplebesideyou." in squeezed(reader.pages[0].extract_text())


def test_letters_that_the_fonts_lack_are_told():
    made = evolve(card("lantern-row"), about="Throw \u6295 and catch.")
    outcome = pdf_of(made)
    assert outcome.value is not None
    assert [finding.code for finding in outcome.findings] == ["D-letters"]
    assert "\u6295" in outcome.findings[0].title


def test_marks_of_the_layout_engine_in_a_text_are_just_letters():
    game = lanterns(head='cue "Aim <b>low</b> & slow"')
    assert "Aim<b>low</b>&slow" in squeezed(read(card_for(game)).pages[0].extract_text())
