"""What the page puts on the shelf."""

from __future__ import annotations

from pathlib import Path

from compose.page.answers.said import in_words
from compose.share.bounds import read_rules
from compose.share.pack.item import item_of
from compose.share.refusal import RefusedError
from compose.share.shelf.open_shelf import open_shelf
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import frozen


@frozen
class Kept:
    """The name of a sheet in addresses; or what stands in the way of keeping it."""

    slug: str
    wrong: str = ""


def keep_sheet(shelf: Path, text: str, instead_of: str, wording: Wording = ENGLISH) -> Kept:
    """Keep a sheet; `instead_of` is the name of the one that it was opened from, "" for a new one.

    A new sheet never takes the place of another one of its name.
    """
    try:
        item = item_of(read_rules(text.encode(), "the sheet"))
    except RefusedError as refusal:
        return Kept("", in_words(refusal.finding("the sheet"), wording))
    opened = open_shelf(shelf)
    if opened.value is None:
        return Kept("", in_words(opened.findings[0], wording))
    with opened.value as there:
        outcome = there.replace(item) if instead_of == item.slug else there.put(item)
    if outcome.value is None:
        return Kept("", in_words(outcome.findings[0], wording))
    return Kept(item.slug)
