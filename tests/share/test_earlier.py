"""What was written before still opens: sheets, modifiers, remixes, classes and a pack, as an earlier version made them.

The files of tests/earlier are never written anew. Their wording is canonical, so a change of the canonical wording
shows here, too: it would change the content hash of everything that anybody has kept.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from random import Random

import pytest

from compose.share.making import Sheets, played
from compose.share.pack.pack import Pack, read_pack
from grammar.edition import LANGUAGE
from grammar.format import format_file
from grammar.parse import parse
from grammar.resolve import resolve
from grammar.tree import GameSheet, RemixSheet
from library import kit_categories
from tests.seed import SEED

FOLDER = Path(__file__).parents[1] / "earlier"
SHEETS = tuple(sorted((FOLDER / "sheets").glob("*.rules")))


@cache
def pack() -> Pack:
    outcome = read_pack((FOLDER / "everything.pack").read_bytes(), "everything.pack")
    assert outcome.value is not None, outcome.findings[0].title
    return outcome.value


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_sheet_opens_and_is_as_tidy_as_it_was(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    read = parse(text, path.name)
    assert read.value is not None, read.findings[0].title
    assert format_file(read.value) == text
    for sheet in read.value.games:
        outcome = resolve(sheet, kit_categories())
        assert outcome.value is not None, (sheet.title, [(each.title, each.place) for each in outcome.findings])


def test_every_game_and_remix_of_a_pack_can_be_played() -> None:
    sheets = pack().sheets
    playable = [sheet for sheet in sheets if isinstance(sheet, GameSheet | RemixSheet)]
    assert len(playable) > 100
    drawn = Random(SEED).sample(playable, 40)
    failed = {sheet.title: outcome.findings for sheet in drawn
              if (outcome := played(sheet, Sheets(sheets))).value is None}  # fmt: skip
    assert not failed


@pytest.mark.parametrize("head", ["game New Words\n", "modifier new words\n", "remix New Words\n", "class New Words\n"])
def test_a_sheet_for_a_newer_program_is_refused_by_saying_so_and_no_more(head: str) -> None:
    text = f"{head}  needs language {LANGUAGE + 1}\n  juggle a ball with both feet\n"
    outcome = parse(text, "new.rules")
    assert outcome.value is None
    assert [(each.code, each.place.line) for each in outcome.findings] == [("L-newer", 2)]
    assert parse(f"class Beck\n  class of 20\n  needs language {LANGUAGE}\n").value is not None
