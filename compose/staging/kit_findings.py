"""The cupboard: what is short, and what stands in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.staging.cupboard import KitRow
from compose.staging.found import note, warning
from grammar.finding import Finding
from grammar.words import count, listing


def kit_findings(rows: Sequence[KitRow]) -> Iterator[Finding]:
    """What the cupboard lacks, and what stands in."""
    for row in rows:
        needed = count(row.needed, row.line.name, row.line.plural)
        stand_in = listing(count(each.count, each.name, each.name) for each in row.stand_ins)
        if row.short > 0:
            have = f"{row.there}" + (f" and {stand_in}" if stand_in else "")
            title = f"The game needs {needed}; the cupboard has {have}: {row.short} short."
            yield warning("F-kit", title, row.line.span, "Play with fewer, or borrow them.", short=row.short)
        elif row.stand_ins:
            are = "is" if row.there == 1 else "are"
            title = f"The game needs {needed}; {row.there} {are} there, {stand_in} can stand in."
            yield note("F-stand-in", title, row.line.span)
