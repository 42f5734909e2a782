"""A pack that somebody sent, read in a worker: it comes from anywhere."""

from __future__ import annotations

from compose.page.answers.said import in_words
from compose.page.answers.values import Read
from compose.page.wording import page_wording
from compose.share.pack.pack import read_pack


def read(data: bytes, language: str) -> Read:
    """The pack of these bytes, or why it is refused."""
    outcome = read_pack(data, "the pack")
    wrong = "" if outcome.value is not None else in_words(outcome.findings[0], page_wording(language))
    return Read(outcome.value, wrong)
