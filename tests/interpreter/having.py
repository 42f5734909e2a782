"""Whether a line gives a ball to a side: on a court in one piece it is somebody's then."""

from __future__ import annotations

from typing import TYPE_CHECKING

from grammar.sentences import ball, resting, then, when
from grammar.sentences.base import Node
from tests.interpreter.names import Part, Stuff
from tests.interpreter.plainly import HAVING, goes_on

if TYPE_CHECKING:
    from tests.interpreter.sheet import Sheet


def gives(sheet: Sheet, line: Node) -> bool:
    """Whether a sentence says anywhere that a side has a ball."""
    if isinstance(line, ball.RestTo):
        meant = sheet.meaning(line.where.name)
        return isinstance(meant, Part) or bool(getattr(meant, "role", None)) or sheet.side_meant(meant) is not None
    if isinstance(line, when.When):
        return any(gives(sheet, each) for each in line.consequences)
    if isinstance(line, resting.Rest | then.MovesTo):
        return gives(sheet, line.place)
    if isinstance(line, resting.RestBack | then.GoesBack):
        loaded = isinstance(line, then.GoesBack) and sheet.is_taken(line.what)
        return not loaded and (line.where is None or isinstance(sheet.meaning(line.where.name), Stuff))
    return isinstance(line, HAVING) or goes_on(line)
