"""Which language a text needs: one for which this program is too old is refused as a whole, not line by line.

The number grows when the language learns to say more; sheets of every earlier one are read as they always were.
"""

from __future__ import annotations

import re

from grammar.finding import Finding, mistake
from grammar.said import quoting
from grammar.span import Span

LANGUAGE = 2
_NEEDS = re.compile(r"^[ \t]*needs language[ \t]+(\d{1,6})[ \t]*$", re.IGNORECASE | re.MULTILINE)


def too_new(text: str, file: str) -> Finding | None:
    """What to say of a text that needs a later language than this program reads."""
    for match in _NEEDS.finditer(text):
        if int(match[1]) > LANGUAGE:
            line = text.count("\n", 0, match.start(1)) + 1
            start = match.start(1) - text.rfind("\n", 0, match.start(1))
            title = quoting(
                "This sheet needs language {match}; this program reads up to language {language}.",
                match=match[1],
                language=LANGUAGE,
            )
            hint = "Get the newer program, or ask for the sheet in fewer words."
            place = Span(file, line, start, start + len(match[1]))
            return mistake("L-newer", title, place, hint)
    return None
