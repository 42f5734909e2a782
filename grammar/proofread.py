"""Everything that is wrong with a file in one pass: slips of words and mistakes of meaning together.

A line with a slip takes part as it was probably meant, so that one mistake does not hide another.
"""

from __future__ import annotations

from collections.abc import Mapping

from grammar.finding import Finding
from grammar.lines import decoded
from grammar.parse import read
from grammar.resolve import resolve


def proofread(data: bytes, file: str, catalogue: Mapping[str, str]) -> tuple[Finding, ...]:
    """All findings of a file's games in the order of the text; `catalogue` as for `resolve`."""
    text, findings = decoded(data, file)
    if findings:
        return findings
    reading = read(text, file)
    found = list(reading.findings)
    for sheet in reading.rules.games:
        found.extend(resolve(sheet, catalogue, whole=sheet.span not in reading.unread).findings)
    return tuple(sorted(found, key=lambda finding: (finding.place.line, finding.place.column)))
