"""The games at a glance, before any of them is read as a sheet: what the first list shows while that is done."""

from __future__ import annotations

import re
from pathlib import Path

import library
from compose.page.kept import MOST_BYTES
from compose.share.refusal import RefusedError
from compose.share.whole_files import read_plain
from grammar.frozen import frozen

TITLE, ABOUT = re.compile(r"(?m)^(?:game|remix) (.+)$"), re.compile(r'(?m)^ +about "(.*)"$')


@frozen
class Glimpse:
    """A game by its name in addresses, with its title and its line as far as they are found."""

    slug: str
    title: str
    about: str
    own: bool


def glimpses(shelf: Path) -> tuple[Glimpse, ...]:
    """Those of the library and of the shelf, by title; one of the shelf stands for one of the library."""
    own = [path for folder in ("games", "remixes") for path in sorted((shelf / folder).glob("*.rules"))]
    found = {path.stem: _glimpse(path, False) for path in (*library.game_paths(), *library.remix_paths())}
    found |= {path.stem: _glimpse(path, True) for path in own}
    return tuple(sorted(found.values(), key=lambda each: each.title))


def _glimpse(path: Path, own: bool) -> Glimpse:
    try:
        text = read_plain(path, MOST_BYTES).decode("utf-8", "replace")
    except RefusedError:  # what is wrong with it the list itself says, once it is there
        text = ""
    title, about = TITLE.search(text), ABOUT.search(text)
    return Glimpse(path.stem, title.group(1) if title else path.stem, about.group(1) if about else "", own)
