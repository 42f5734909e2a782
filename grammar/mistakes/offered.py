"""What a finding says once there is a line that mends it: what was meant, and the line to write."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.finding import Correction, Finding, retold
from grammar.said import Value, listed, quoting, write

MOVE_IT = "Move it to {places}."


def with_lines(
    finding: Finding, corrections: tuple[Correction, ...], lines: Sequence[str], gone: Sequence[Finding]
) -> Finding:
    """The finding as its first correction sees it, with the line to write; `gone` are all that go with it."""
    first = corrections[0]
    place = first.mark or finding.place
    places = {each: None for one in gone for each in (one.place, *one.others)}
    elsewhere = tuple(each for each in places if each.line != place.line) if first.mark else finding.others
    return retold(
        finding,
        first.title,
        _offered(corrections, lines[first.place.line - 1].strip()),
        code=first.code or finding.code,
        place=place,
        others=elsewhere if first.place.line != finding.place.line else finding.others,
        corrections=corrections,
    )


def _offered(corrections: Sequence[Correction], written: str) -> Value:
    first = corrections[0]
    if first.section:
        places = listed((f"`{each.section}`" for each in corrections if each.line == first.line), "or")
        if first.line == written:
            return quoting(MOVE_IT, places=places)
        return quoting("Move it to {places} and write: {line}", places=places, line=first.line)
    if "\n" in first.line:
        heading, below = first.line.split("\n")
        hint = "Write `{heading}` on a line of its own, and below it: {line}"
        return quoting(hint, heading=heading, line=below.strip())
    if not first.sure:
        return quoting("Take another word for it, or write: {line}", line=first.line)
    if len(corrections) > 1 and not any(each.section or "\n" in each.line for each in corrections):
        lines = listed((f"`{each.line}`" for each in corrections), "or")
        return quoting("Write one of these: {lines}.", lines=lines)
    return write(first.line)
