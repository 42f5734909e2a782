"""A refusal inside this folder: raised where a check fails, turned into a finding at the stage's door."""

from __future__ import annotations

import re
import unicodedata

from grammar.finding import Finding, Severity
from grammar.span import Span

MOST_SHOWN_LETTERS = 60


class RefusedError(Exception):
    """Why a pack, a file or a shelf is not taken. Never leaves a public function of this folder."""

    def __init__(self, code: str, title: str, hint: str = "") -> None:
        super().__init__(title)
        self.code, self.title, self.hint = code, title, hint

    def finding(self, file: str) -> Finding:
        """The refusal as a finding about the whole of a file."""
        return Finding(self.code, Severity.ERROR, self.title, Span(file, 0, 0, 0), self.hint)


def shown(text: object, most: int = MOST_SHOWN_LETTERS) -> str:
    """A foreign text fit for one line of a message: short, and without signs that move the cursor."""
    whole = re.sub(r"\s+", " ", str(text))
    cut = whole if len(whole) <= most else whole[: most - 1] + "…"
    return "".join("�" if unicodedata.category(sign)[0] in "CZ" and sign != " " else sign for sign in cut)
