"""The French cards of the library read back from their PDF: every word, on one page, or on two in large print."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO

import pytest
from pypdf import PdfReader
from read_back import pieces

import library
from compose.draw.card.large import large_pdf_of
from compose.draw.card.of_remix import Look, card_of_remix
from compose.draw.card.pdf import MARGIN_PT, PAPERS_PT, pdf_of
from compose.draw.units import METRIC
from compose.staging.staging import stage
from compose.telling.wording import wording_of
from compose.terminal.stages import remixed
from library.load import game_paths, remix_paths

NAMES = tuple(path.stem for path in (*game_paths(), *remix_paths()))
CHECK = ("Vérifié pour 11 hérons et 11 brochets\u00a0: rien à corriger", "Victoire possible pour les hérons.")
FORECAST = (
    "Une manche dure 5,7\u00a0min en moyenne\u00a0; le temps met fin à 27\u00a0% des manches (prévision).",
    "Un élève joue 1,9 fois par minute et passe 19\u00a0% de la manche sans jouer\u00a0; les hérons gagnent 49\u00a0% "
    "et les brochets gagnent 49\u00a0% des manches.",
)


@cache
def card(name, large):
    made, _said = remixed(name, ())
    look = Look(METRIC, wording_of("fr"), large)
    return card_of_remix(made, stage(made.game, library.norms(), library.kit_names()), look, (*CHECK, *FORECAST))


@cache
def printed(name, paper, large):
    outcome = (large_pdf_of if large else pdf_of)(card(name, large), paper)
    assert outcome.value is not None, outcome.findings
    assert {finding.code for finding in outcome.findings} <= {"D-not-large"}
    return outcome.value


def squeezed(text):
    return re.sub(r"\s+", "", text)


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper", PAPERS_PT)
@pytest.mark.parametrize("large", [False, True])
def test_every_word_is_on_the_page(name, paper, large):
    reader = PdfReader(BytesIO(printed(name, paper, large)))
    assert len(reader.pages) == (2 if large else 1)
    assert reader.trailer["/Root"]["/Lang"] == "fr"
    pages = squeezed("".join(page.extract_text() for page in reader.pages))
    made = card(name, large)
    lines = [made.title, made.subtitle, made.about, *(label + value for label, value in made.facts), *made.footer]
    lines += [line for part in made.sections for line in (part.heading, *part.lines)]
    assert [line for line in lines if squeezed(line) not in pages] == []


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("large", [False, True])
def test_nothing_is_over_the_edge_or_over_anything_else(name, large):
    wide, high = PAPERS_PT["A4"]
    data = printed(name, "A4", large)
    for page in range(2 if large else 1):
        level = [piece for piece in pieces(data, page) if not piece.turned]
        assert len(level) > 10
        for piece in level:
            assert piece.left >= MARGIN_PT - 1 and piece.right <= wide - MARGIN_PT + 1
            assert MARGIN_PT - 1 <= piece.base <= high - MARGIN_PT
        text = [piece for piece in level if piece.size >= 6.5]
        assert not [(one, two) for at, one in enumerate(text) for two in text[at + 1 :] if one.overlaps(two)]
