"""Names of files from names of games: small letters, digits and hyphens, safe on every system."""

from __future__ import annotations

import hashlib
import re
import unicodedata

SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
MOST_SLUG_LETTERS = 80
# Names that one common system keeps for its devices; from memory.
_DEVICES = frozenset(("con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))))


def slug(name: str) -> str:
    """ "Lantern Row" gives "lantern-row". Letters that have no plain form are told apart by a short hash.

    Two names of one slug count as one name everywhere in this folder: "Lantern Row!" is "lantern row".
    """
    folded = unicodedata.normalize("NFKC", name).casefold()
    plain = unicodedata.normalize("NFKD", folded)
    letters = "".join(letter for letter in plain if not unicodedata.combining(letter))
    kept = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")
    lost = any(letter.isalnum() and not letter.isascii() for letter in letters)
    if lost or not kept or kept in _DEVICES:
        mark = hashlib.sha256(folded.encode("utf-8", "replace")).hexdigest()[:8]
        kept = f"{kept or 'game'}-{mark}"
    return kept[:MOST_SLUG_LETTERS].strip("-")


def free_name(name: str, taken: frozenset[str]) -> str:
    """The first of "Lantern Row 2", "Lantern Row 3", ... whose slug is not taken yet."""
    number = 2
    while slug(numbered := f"{name[:55].rstrip()} {number}") in taken:
        number += 1
    return numbered
