"""A pack that somebody sent, read in a worker: it comes from anywhere."""

from __future__ import annotations

from compose.page.answers.values import Read
from compose.share.pack import read_pack


def read(data: bytes) -> Read:
    """The pack of these bytes, or why it is refused."""
    outcome = read_pack(data, "the pack")
    wrong = "" if outcome.value is not None else f"{outcome.findings[0].title} {outcome.findings[0].hint}".strip()
    return Read(outcome.value, wrong)
