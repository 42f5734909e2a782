"""The games that can be chosen: the library's and those on the shelf, each with the texts that it is made from."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import library
from compose.share.pack.item import Item, item_of, sheets_in
from compose.share.shelf.open_shelf import open_shelf
from grammar.frozen import frozen
from grammar.parse import parse_bytes

MOST_GENERATIONS = 12


@frozen
class Sheet:
    """A game by its name in addresses. `texts` begins with its own, then those of the games that it comes from."""

    slug: str
    title: str
    texts: tuple[str, ...]
    own: bool


def sheets(shelf: Path) -> dict[str, Sheet]:
    """Every game and remix by its slug; one on the shelf stands before one of the library with the same name."""
    own = {each.slug: each for each in shelf_items(shelf) if each.kind != "modifier"}
    known = {**_of_library(), **own}
    found = {}
    for slug, item in {**own, **_of_library(), **own}.items():
        found[slug] = Sheet(slug, item.name, tuple(_texts(item, known)), slug in own)
    return found


def shelf_items(shelf: Path) -> tuple[Item, ...]:
    """What lies on the shelf; nothing where there is no shelf yet."""
    if not shelf.is_dir():
        return ()
    opened = open_shelf(shelf).value
    if opened is None:
        return ()
    with opened:
        return tuple(each.item for each in opened.stored().value or ())


def _of_library() -> dict[str, Item]:
    paths = (*library.game_paths(), *library.remix_paths())
    return {path.stem: _item(path.read_text(encoding="utf-8"), path.stem) for path in paths}


@lru_cache(maxsize=256)
def _item(text: str, slug: str) -> Item:
    rules = parse_bytes(text.encode(), f"{slug}.rules").value
    assert rules is not None, "the library's sheets can be read"
    return item_of(sheets_in(rules)[0])


def _texts(item: Item, known: dict[str, Item]) -> Iterator[str]:
    """The text of a game, then those of its bases, as far as they are there."""
    for _generation in range(MOST_GENERATIONS):
        yield item.text
        base = known.get(item.lineage.base_name.lower().replace(" ", "-")) if item.lineage else None
        if base is None:
            return
        item = base
