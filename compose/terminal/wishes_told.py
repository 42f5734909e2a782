"""The language by what a teacher wants, on the terminal."""

from __future__ import annotations

import textwrap

from compose.terminal.answer import WIDTH, say, say_json
from grammar.mistakes.wishes import Row, page_by_wishes, wishes_for


def tell_wishes(wanted: str, as_json: bool) -> int:
    """Tell how the language says what is wanted, or all wishes with their sentences; the exit code."""
    if not wanted and not as_json:
        say(page_by_wishes())
        return 0
    found = wishes_for(wanted)
    if as_json:
        say_json({"wishes": [{"wish": each.wish, "sentences": [_told(row) for row in each.rows]} for each in found]})
        return 0 if found else 1
    for wish in found:
        say(f"{wish.wish}:")
        if not wish.rows:
            say("  cannot be said yet; words in quotes under play are kept for the card, but not checked")
        if wish.near:
            say("  what comes near it:")
        for row in wish.rows or wish.near:
            for line in textwrap.wrap(row.example, WIDTH, initial_indent="  ", subsequent_indent="      "):
                say(line)
            say(f"      ({row.section}: {row.says})")
    if not found:
        say("The language has nothing near it. `ruleweave say` alone shows all that it can say.")
    return 0 if found else 1


def _told(row: Row) -> dict[str, str]:
    return {"section": row.section, "says": row.says, "example": row.example}
