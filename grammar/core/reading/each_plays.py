"""Points where each plays for themselves: of whoever did something, never of a side that does not act."""

from __future__ import annotations

from grammar.core.reading.events import Moment
from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless
from grammar.sentences import then
from grammar.sentences.base import AnySide, SideRef, SideSame


def of_whoever_did_it(reader: Reader, consequence: then.Scores, moment: Moment) -> AnySide:
    """Whose points these are: where each plays for themselves "its side" means nobody. Raises Senseless."""
    side = consequence.side
    unclear = moment.actor is not None and isinstance(side, SideRef | SideSame)
    if not unclear or not any(each.solo for each in reader.sides):
        return side
    points = f"{consequence.points.words()} {'point' if consequence.points.whole == 1 else 'points'}"
    title = f"`{side.words()}` is nobody here: each plays for themselves."
    hint = f"Say who did it, such as: the thrower's side {consequence.verb} {points}"
    raise Senseless(side, title, hint)
