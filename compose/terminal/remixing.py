"""The remixed rule sheet, and what each modifier did to it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from pathlib import Path

from compose.modifiers.remix_sheet import remix_text
from compose.terminal.answer import WIDTH, exit_code, finding_json, say, say_findings, say_json, say_to_error
from compose.terminal.stages import remixed
from compose.terminal.writing import write


def show_remix(name: str, modifiers: Sequence[str], out: Path | None, force: bool, as_json: bool) -> int:
    """Print or write a remix; the exit code. A sheet on the terminal stands alone: what was done is told beside it."""
    made, findings = remixed(name, modifiers, as_json)
    text = remix_text(made)
    if out is not None:
        write(out, text.encode(), force, as_json)
    if as_json:
        say_json(
            {
                "base": made.base.title,
                "modifiers": [use.label for use in made.uses],
                "edits": [
                    {"by": edit.by, "section": edit.section, "before": edit.before, "after": edit.after}
                    for edit in made.edits
                ],
                "text": text,
                "findings": [finding_json(finding) for finding in findings],
            }
        )
        return exit_code(findings)
    beside = out is None
    tell = say_to_error if beside else say
    if beside:
        say(text.rstrip())
        tell("")
    for use in made.uses:
        tell(f"What {use.label} did:")
        for edit in made.edits:
            if edit.by == use.label:
                for line in textwrap.wrap(edit.words(), WIDTH, initial_indent="  - ", subsequent_indent="    "):
                    tell(line)
    if out is not None:
        say(f"Written to {out}.")
    say_findings(findings, to_error=beside)
    return exit_code(findings)
