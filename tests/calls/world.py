"""A teacher's folder to call commands in: sound sheets, spoiled ones, packs, a shelf, and things that are no sheets."""

from __future__ import annotations

import os
from pathlib import Path
from random import Random

import library

SMALL = """game Small Pins
  ages 8 to 12
  skills roll, aim
  about "Roll at the other side's pins."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0

space
  court 12 m by 8 m, halved across

sides
  north and south, 3 to 12 players each, mirrored

kit
  4 foam balls
  2 pins for each side, like a plastic pin

set-up
  pins on the back line of their side, evenly spaced
  2 foam balls in each half

play
  players stay in their half
  players roll a foam ball at the pins of the other side
  a ball is held at most 10 s

when
  a pin is knocked: it stays down

finish
  a side wins when the other side has no pins standing
  after 5 min: more pins standing wins, else a draw

care
  "Roll along the floor."
"""
CLASS = """class Beck Class
  class of 18
  ages 9 to 10
  lesson of 40 min
  8 foam balls
  8 plastic pins
"""


def spoiled(text: str, chance: Random) -> str:
    """A sheet with a few letters, words or lines gone, doubled or foreign."""
    pieces = list(text)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(pieces))
        stretch = chance.choice([1, 1, 5, 40])
        instead = chance.choice(["", "x", "\n", "\t", "0", "999999999", "\u0130", "\x1b[2J", "é", '"', pieces[at] * 30])
        pieces[at : at + stretch] = [instead]
    return "".join(pieces)


def make_world(folder: Path, chance: Random) -> None:
    """Fill a folder with what commands are called with."""
    (folder / "small.rules").write_text(SMALL, encoding="utf-8")
    (folder / "class.rules").write_text(CLASS, encoding="utf-8")
    (folder / "remix.rules").write_text(
        'remix Small Kicks\n  based on "Small Pins"\n  with "kick instead"\n  licence CC-BY-4.0\n', encoding="utf-8"
    )
    (folder / "small-pins.rules").write_text(SMALL, encoding="utf-8")
    (folder / "big.rules").write_bytes(next(p for p in library.game_paths() if p.stem == "lantern-row").read_bytes())
    (folder / "my modifier.rules").write_bytes(library.modifier_paths()[0].read_bytes())
    for number in range(12):
        text = chance.choice([SMALL, SMALL, CLASS, (folder / "remix.rules").read_text(encoding="utf-8")])
        (folder / f"spoiled-{number}.rules").write_text(spoiled(text, chance), encoding="utf-8")
    (folder / "empty.rules").write_bytes(b"")
    (folder / "bytes.rules").write_bytes(chance.randbytes(500))
    (folder / "nul.zip").write_bytes(b"PK\x03\x04" + chance.randbytes(200))
    (folder / "a\x1b[31m\u202e.rules").write_text(SMALL, encoding="utf-8")
    (folder / "Größe und # %.rules").write_text(SMALL, encoding="utf-8")
    (folder / "mine.txt").write_text("mine", encoding="utf-8")
    (folder / "folder").mkdir()
    (folder / "common").mkdir()
    os.symlink(folder / "nowhere", folder / "dangling.rules")
    os.symlink(folder / "mine.txt", folder / "link.txt")
