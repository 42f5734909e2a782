"""Many cards in one file: contents with the right pages, links and outline; large print; HTML that stands alone."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from io import BytesIO

import pytest
from drawn_games import NAMES, card_for, library_game
from pypdf import PdfReader

from compose.draw.card.booklet import booklet_of
from compose.draw.card.html import html_of
from compose.draw.card.large import LARGE_PT, large_pdf_of
from compose.draw.card.pdf import fitting
from compose.draw.units import UNITS, in_units
from compose.telling.wording import wording_of
from library.load import kit_catalogue


def card(name, **look):
    game = library_game(name)
    return card_for(game, catalogue=kit_catalogue(), **look)


def squeezed(text):
    return re.sub(r"\s+", "", text)


def test_contents_name_the_page_of_every_card():
    cards = 2 * [card(name) for name in NAMES[:25]]
    reader = PdfReader(BytesIO(booklet_of(cards, "All of them").value.pdf))
    contents = len(reader.pages) - len(cards)
    assert contents > 1
    listed = "".join(reader.pages[page].extract_text() for page in range(contents))
    for order, one in enumerate(cards):
        page = contents + order
        assert squeezed(one.title) in squeezed(reader.pages[page].extract_text())
        assert re.search(rf"{re.escape(one.title)}\s+{page + 1}\b", listed), one.title
    assert [entry.title for entry in reader.outline] == [one.title for one in cards]
    links = [link for page in reader.pages[:contents] for link in page.get("/Annots", ())]
    assert len(links) == len(cards)


def test_a_booklet_can_be_stopped():
    assert booklet_of([card("lantern-row")] * 3, "Stopped", keep_going=lambda what, done, of: done < 1).value is None


def test_a_card_left_out_is_not_counted(monkeypatch):
    cards = [card(name) for name in NAMES[:4]]
    monkeypatch.setattr(
        "compose.draw.card.booklet.fitting", lambda one, paper: None if one is cards[0] else fitting(one, paper)
    )
    made = booklet_of(cards, "Not all of them")
    assert made.value.titles == tuple(one.title for one in cards[1:])
    assert [finding.title for finding in made.findings if cards[0].title in finding.title]


@pytest.mark.sample(4)
@pytest.mark.parametrize("name", NAMES)
def test_large_print_has_every_word_on_two_pages(name):
    made = card(name, large=True)
    outcome = large_pdf_of(made)
    reader = PdfReader(BytesIO(outcome.value))
    assert len(reader.pages) == 2
    read = squeezed("".join(page.extract_text() for page in reader.pages))
    for part in made.sections:
        assert squeezed(part.heading) in read
        assert all(squeezed(line) in read for line in part.lines)
    if not outcome.findings:
        sizes = []
        reader.pages[1].extract_text(visitor_text=lambda text, _c, _m, _f, size: sizes.append(size))
        assert max(sizes) >= LARGE_PT


class Tags(HTMLParser):
    """What a page of HTML opens, closes and asks for from elsewhere."""

    def __init__(self) -> None:
        super().__init__()
        self.open, self.text, self.asked, self.seen = [], [], [], []

    def handle_starttag(self, tag, attrs):
        self.seen.append((tag, dict(attrs)))
        self.asked += [value for key, value in attrs if key in ("src", "href")]
        if tag not in ("meta", "path", "circle"):
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.seen.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text.append(data)


@pytest.mark.parametrize("name", NAMES)
def test_html_stands_alone_and_has_every_word(name):
    made = card(name)
    page = Tags()
    page.feed(html_of(made))
    assert page.open == []
    assert page.asked == []
    assert ("html", {"lang": "en-GB"}) in page.seen
    said = squeezed("".join(page.text))
    for part in made.sections:
        assert all(squeezed(line) in said for line in part.lines)
    assert squeezed(made.plan.description) in said


def test_feet():
    assert in_units("Mark a court 18 m by 9 m, 50 cm from 5 min", UNITS["feet"]) == (
        "Mark a court 59 ft by 30 ft, 20 in from 5 min"
    )
    assert in_units("The strip is 2.5 m deep (216 m2)", UNITS["feet"]) == "The strip is 8 ft deep (216 m2)"
    made = card("lantern-row", units=UNITS["feet"])
    assert ("Court", "59 ft by 30 ft") in made.facts
    words = [shape.text for shape in made.plan.shapes if hasattr(shape, "text")]
    assert "15 ft" in words
    assert "32 ft to lanterns" in words
    assert not any(re.search(r"\d m\b", line) for part in made.sections for line in part.lines)


def test_french_contents_say_what_a_title_means_and_ages_in_years():
    cards = [card_for(library_game(name), wording=wording_of("fr")) for name in ("harvest-kettles", "crag-row")]
    reader = PdfReader(BytesIO(booklet_of(cards, "Jeux", wording=wording_of("fr")).value.pdf))
    listed = " ".join(reader.pages[0].extract_text().split())
    for card in cards:
        assert card.subtitle and f"{card.title} – {card.subtitle}" in listed
        assert dict(card.facts)["Âge"].endswith(" ans")
    assert [entry.title for entry in reader.outline] == [f"{card.title} – {card.subtitle}" for card in cards]
