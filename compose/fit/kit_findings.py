"""The cupboard: what is short, what stands in, which balls are too hard."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from compose.modifiers.fit_for import hard_at_people
from compose.staging.cupboard import KitRow
from compose.staging.found import note, warning
from grammar.finding import Finding
from grammar.game import Game
from grammar.words import count, listing
from library import KitItem


def kit_findings(game: Game, rows: Sequence[KitRow], kit: Mapping[str, KitItem]) -> Iterator[Finding]:
    """What the cupboard lacks, what stands in, and hard balls where players are aimed at."""
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
    for line in (game.kit_named(ball.key) for ball in hard_at_people(game, kit)):
        title = f"Players are aimed at with {line.plural}, which are not soft."
        yield warning("F-hard-ball", title, line.span, "Take soft balls.")
