"""Tree → text that is written down for others: only text that reads back as the same tree."""

from __future__ import annotations

import attrs

from grammar.finding import Outcome, mistake
from grammar.format import format_file
from grammar.parse import parse
from grammar.said import quoting, said
from grammar.span import Span
from grammar.tree import GameSheet, RemixSheet, RuleFile


def written(sheet: GameSheet | RemixSheet) -> Outcome[str]:
    """The canonical text of a sheet that was made, not read; a finding where a name or a sentence in it has letters
    that a sheet cannot hold, such as a quotation mark or a line end."""
    file = "the sheet to be written"
    rules = RuleFile(file, (), (), (), ())
    part = {"games": (sheet,)} if isinstance(sheet, GameSheet) else {"remixes": (sheet,)}
    rules = attrs.evolve(rules, **part)
    text = format_file(rules)
    again = parse(text, file)
    if again.value is not None and (again.value.games, again.value.remixes) == (rules.games, rules.remixes):
        return Outcome(text)
    why = again.findings[0] if again.findings else None
    title = quoting(
        "This cannot be written so that it can be read again: {why}",
        why=(why.said or (why.title,))[0] if why else said("It would say something else."),
    )
    hint = "Leave quotation marks, line ends and signs that are not letters out of names, sentences and credits."
    return Outcome(None, (mistake("L-written", title, Span(file, 0, 0, 0), hint),))
