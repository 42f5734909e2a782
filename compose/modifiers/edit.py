"""What a modifier did to a game, line by line."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.span import Span
from grammar.topics import Topic


@frozen
class Edit:
    """One line that came, went or changed: `before` and `after` are its words, "" where there is none.

    `by` is the modifier with its values, `why` the place of the modifier's line.
    """

    section: str
    before: str
    after: str
    by: str
    topic: Topic
    why: Span = field(eq=False)

    def words(self) -> str:
        """Such as "added under when: ..."."""
        if not self.before:
            return f"added under {self.section}: {self.after}"
        if not self.after:
            return f"taken from {self.section}: {self.before}"
        return f"changed under {self.section}: {self.before} → {self.after}"
