"""The card of every library game under ten seeded remixes, read back from its PDF: one page, every word, nothing
over anything else and nothing over the edge.

A few of the remixes are looked at on every run; all of them with RULEWEAVE_ALL_REMIXES=1.
"""

from __future__ import annotations

import os
import random
import re
from functools import cache
from io import BytesIO
from itertools import combinations

import pytest
from attrs import evolve
from drawn_games import NAMES, card_for, library_game
from pypdf import PdfReader
from read_back import pieces

from compose.draw.card.card import CardNotes
from compose.draw.card.fonts import PLAIN, load_fonts
from compose.draw.card.pdf import MARGIN_PT, PAPERS_PT, pdf_of
from compose.modifiers.apply import remix
from compose.modifiers.clash import clashes
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Use
from grammar.parse import parse
from library.load import kit_catalogue, kit_names, modifier_paths

REMIXES = 10
LOOKED_AT = REMIXES if os.environ.get("RULEWEAVE_ALL_REMIXES") else 2
MOST_MODIFIERS = 4


@cache
def modifiers():
    sheets = [parse(path.read_text(encoding="utf-8"), path.name).value.modifiers[0] for path in modifier_paths()]
    return tuple(modifier_of(sheet).value for sheet in sheets)


def remixed(name, seed):
    """A remix of a game with one to four modifiers of the library that fit it and each other."""
    chance = random.Random(f"{name} {seed}")
    wanted = chance.randint(1, MOST_MODIFIERS)
    made, uses = None, []
    for modifier in chance.sample(modifiers(), len(modifiers())):
        tried = [*uses, Use(modifier, {})]
        if any(clashes(tried)):
            continue
        outcome = remix(library_game(name), tried, kit_names())
        if outcome.value is not None and not outcome.broken:
            made, uses = outcome.value, tried
        if len(uses) == wanted:
            break
    assert made is not None
    return made


def card_of_remix(made):
    notes = CardNotes(
        modifiers=tuple((use.label, use.modifier.about) for use in made.uses),
        known=(
            "Checked for 20 pupils: nothing to mend",
            "Every round can end and each side can win (proved)",
            "About 4.6 minutes to a round, 4 in 5 of them over before the bell",
        ),
        lineage=(made.base.title, *(use.label for use in made.uses)),
    )
    game = evolve(made.game, sheet=evolve(made.game.sheet, title=f"{made.base.title} Remix"))
    return card_for(game, notes, catalogue=kit_catalogue())


def squeezed(text):
    return re.sub(r"\s+", "", text)


@pytest.mark.sample(5)
@pytest.mark.parametrize("seed", range(LOOKED_AT))
@pytest.mark.parametrize("name", NAMES)
def test_the_card_of_a_remix_is_whole(name, seed):
    card = card_of_remix(remixed(name, seed))
    paper = ("A4", "Letter")[seed % 2]
    outcome = pdf_of(card, paper)
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    assert not outcome.findings
    reader = PdfReader(BytesIO(outcome.value))
    assert len(reader.pages) == 1
    page = squeezed(reader.pages[0].extract_text())
    said = [card.title, card.about, *card.footer, *(label + value for label, value in card.facts)]
    said += [line for part in card.sections for line in (part.heading, *part.lines)]
    for line in said:
        assert squeezed(line) in page, line
    nothing_is_clipped(outcome.value, paper)


def nothing_is_clipped(data, paper):
    wide, high = PAPERS_PT[paper]
    found = pieces(data)
    for piece in found:
        across, up = (0.0, piece.wide) if piece.turned else (piece.wide, 0.8 * piece.size)
        assert piece.left >= MARGIN_PT - 1 and piece.left + across <= wide - MARGIN_PT + 1, piece
        assert piece.base >= MARGIN_PT - 1 and piece.base + up <= high - MARGIN_PT + 1, piece
    for one, other in combinations([piece for piece in found if not piece.turned], 2):
        assert not one.overlaps(other), (one, other)


def test_boxes_see_what_lies_over_something_else():
    """The test's own eyes: text printed twice at one place is seen as clipped."""
    from reportlab.pdfgen.canvas import Canvas

    buffer = BytesIO()
    load_fonts()
    canvas = Canvas(buffer)
    canvas.setFont(PLAIN, 10)
    canvas.drawString(100, 500, "one line")
    canvas.drawString(120, 503, "another line over it")
    canvas.save()
    with pytest.raises(AssertionError):
        nothing_is_clipped(buffer.getvalue(), "A4")
