"""A pack that somebody sent, read in a worker: it comes from anywhere. And a remix of the lesson as a thing to give."""

from __future__ import annotations

from compose.modifiers.parents import sheet_of_uses
from compose.modifiers.remix_sheet import remix_title
from compose.page.answers.at_hand import remixed
from compose.page.answers.said import in_words
from compose.page.answers.values import Asked, Read
from compose.page.wording import page_wording
from compose.share.pack.item import Item, item_of
from compose.share.pack.pack import read_pack
from grammar.words import listing


def read(data: bytes, language: str) -> Read:
    """The pack of these bytes, or why it is refused."""
    outcome = read_pack(data, "the pack")
    wrong = "" if outcome.value is not None else in_words(outcome.findings[0], page_wording(language))
    return Read(outcome.value, wrong)


def remix_of_lesson(asked: Asked, title: str) -> Item | None:
    """The remix as a sheet that is made again from its base, called so (its usual name with ""); None where it cannot
    be made."""
    made = remixed(asked.texts, asked.uses).value
    if made is None:
        return None
    about = f"{made.base.title} with {listing(each.label for each in made.uses)}."
    return item_of(sheet_of_uses(made.base, made.uses, title or remix_title(made), about))
