"""The content hash tells what a sheet says, and nothing else."""

from __future__ import annotations

import hashlib

import pytest
from shared_games import FELL_GATE, MORE_CONES, game_sheet, modifier_sheet

from compose.modifiers.content_hash import content_hash, plain_text
from compose.share.naming import SLUG, free_name, slug
from grammar.format import format_game
from tests.interpreter.sheets import library_game


def test_it_is_sha256_of_the_canonical_text_without_notes() -> None:
    bare = FELL_GATE.split("\n", 1)[1]
    assert plain_text(game_sheet()) == bare
    assert content_hash(game_sheet()) == hashlib.sha256(bare.encode()).hexdigest()


@pytest.mark.parametrize(
    "written",
    [
        FELL_GATE.replace("play\n", "play\n  note: why so\n"),
        FELL_GATE + "\nnote: the end\n",
        FELL_GATE.replace("  ", "\t").replace("\n", "\r\n"),
        FELL_GATE.replace("kit\n  2 foam balls", "KIT:\n\n  2   Foam   Balls"),
        FELL_GATE.replace("players roll a", "PLAYERS ROLL A"),
    ],
)
def test_notes_blanks_and_case_do_not_count(written: str) -> None:
    assert content_hash(game_sheet(written)) == content_hash(game_sheet())


@pytest.mark.parametrize(
    ("old", "new"), [("14 m", "15 m"), ("Fell Gate", "Dell Gate"), ("5 min", "6 min"), ("Stop the", "Halt the")]
)
def test_what_is_said_counts(old: str, new: str) -> None:
    assert content_hash(game_sheet(FELL_GATE.replace(old, new))) != content_hash(game_sheet())


def test_notes_in_the_block_of_a_modifier_do_not_count() -> None:
    noted = MORE_CONES.replace("    after", "    note: shorter\n    after")
    assert content_hash(modifier_sheet(noted)) == content_hash(modifier_sheet(MORE_CONES))
    assert "shorter" in noted and format_game(game_sheet()) != plain_text(game_sheet())


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Lantern Row", "lantern-row"),
        ("Lantern Row!", "lantern-row"),
        ("LANTERN  ROW", "lantern-row"),
        ("Bär & Fähre", "bar-fahre"),
        ("\u00dcber\u2019s Feld", "uber-s-feld"),
        ("Größe", "grosse"),
        ("a" * 200, "a" * 80),
    ],
)
def test_a_name_becomes_a_plain_file_name(name: str, expected: str) -> None:
    assert slug(name) == expected


def test_names_in_other_letters_are_told_apart() -> None:
    names = [slug(name) for name in ("Игра", "Гора", "遊戲", "Con", "nul", "...")]
    assert len(set(names)) == len(names)
    assert all(SLUG.fullmatch(name) for name in names) and "con" not in names


def test_a_free_name_is_free() -> None:
    assert free_name("Fell Gate", frozenset(("fell-gate", "fell-gate-2"))) == "Fell Gate 3"
    assert slug(free_name("x" * 60, frozenset())) != slug("x" * 60)


def test_a_bench_has_the_hash_that_it_had_when_one_waited_in_it() -> None:
    """Of the canonical text of 0.2, in which whoever waits in a bench comes back."""
    known = "979c0a1225b87b9b6f4b0e8acb53be131eb1d17cc86b0d4ba9f28d93cbd8c1ba"
    assert content_hash(library_game("burr-toss").sheet) == known
