"""Where a piece of text stands: the one way the project points at a line."""

from __future__ import annotations

from grammar.frozen import field, frozen


@frozen
class Changed:
    """What a line says now that stands otherwise in its file, and the line by which it is changed."""

    words: str
    by: Span

Row = tuple[str, int]


@frozen
class Span:
    """A stretch of one line of one file; lines and columns count from 1, `end` is past the last.

    `line` 0 means that the thing has no text of its own (a default, a built-in rule). `changed` where a modifier has
    made another line of it.
    """

    file: str
    line: int
    column: int
    end: int
    changed: Changed | None = field(default=None, eq=False)

    @property
    def row(self) -> Row:
        """The line of the file: lines of several files that make one sheet may have the same number."""
        return self.file, self.line

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


def nowhere(file: str = "") -> Span:
    """The place of something that no file says."""
    return Span(file, 0, 0, 0)
