"""The strategies of all property tests in one place; a new kind of sentence joins here."""

from __future__ import annotations

from game_texts import games, plain_games, written
from modifier_texts import library_modifiers, modifiers, uses
from mutations import hostile_files, library_texts, spoiled_bytes, spoiled_files

__all__ = [
    "games",
    "hostile_files",
    "library_modifiers",
    "library_texts",
    "modifiers",
    "plain_games",
    "spoiled_bytes",
    "spoiled_files",
    "uses",
    "written",
]
