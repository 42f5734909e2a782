"""The cupboard: what is short, and what stands in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.staging.cupboard import KitRow
from compose.staging.found import note, warning
from grammar.finding import Finding
from grammar.said import Listed, Many, Value, Written, said
from grammar.words import article


def kit_findings(rows: Sequence[KitRow]) -> Iterator[Finding]:
    """What the cupboard lacks, and what stands in."""
    for row in rows:
        needed = Many(row.needed, row.line.name, row.line.plural)
        stand_in = Listed(tuple(Many(each.count, each.name, each.name) for each in row.stand_ins))
        if row.short > 0:
            have = said("{number} and {things}", number=row.there, things=stand_in) if row.stand_ins else row.there
            title = said(
                "The game needs {things}; the cupboard has {have}: {short} short.",
                things=needed,
                have=have,
                short=row.short,
            )
            yield warning("F-kit", title, row.line.span, _hint(row), short=row.short)
        elif row.stand_ins:
            pattern = "The game needs {things}; {number} are there, {instead} can stand in."
            if row.there == 1:
                pattern = "The game needs {things}; {number} is there, {instead} can stand in."
            title = said(pattern, things=needed, number=row.there, instead=stand_in)
            yield note("F-stand-in", title, row.line.span)


def _hint(row: KitRow) -> Value:
    """What would mend it; of a thing that the library does not know, how something else comes to stand in."""
    if not row.perhaps_like:
        return "Play with fewer, or borrow them."
    like = Written(f", like {article(row.perhaps_like)}")
    return said(
        "Nothing says what they are like. Write `{like}` behind them, and what is like it can stand in.", like=like
    )
