"""Points where each plays for themselves, or of all sides but one: of whoever did something, and of the others."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Result
from grammar.core.values import SideId
from grammar.sentences import then
from grammar.sentences.base import AnySide, SideRef, SideSame
from grammar.sentences.determiners import ALL


def of_whoever_did_it(reader: Reader, consequence: then.Scores, moment: Moment) -> AnySide:
    """Whose points these are: where each plays for themselves "its side" means nobody. Raises Senseless."""
    side = consequence.side
    unclear = moment.actor is not None and isinstance(side, SideRef | SideSame)
    if not unclear or not any(each.solo for each in reader.sides):
        return side
    title = "`{said}` is nobody here: each plays for themselves, and whose a target is, is not known."
    hint = "Say only what who did it wins or loses (the thrower's side); what the owner loses goes into quotes."
    raise Senseless(side, title, hint)


def others_of_doer(reader: Reader, phrase: AnySide, moment: Moment) -> frozenset[SideId]:
    """ "Each other side": all but that of who did it, where it is done to nobody. Else none."""
    doer = moment.actor or moment.of_each
    if not isinstance(phrase, SideRef) or not phrase.other or phrase.determiner not in ALL or doer is None:
        return frozenset()
    return reader.others(doer) if moment.result in (None, Result.MISSED, Result.LEFT) else frozenset()
