"""Points where each plays for themselves, or of all sides but one: of whoever did something, and of the others."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import OWN_WORDS, Senseless, Whose, whose_side
from grammar.core.rules import ON_A_PLAYER, Happening, Result
from grammar.core.values import SHARED, SideId, Thing
from grammar.meanings import ACTORS
from grammar.said import write
from grammar.sentences import then
from grammar.sentences.base import AnySide, Node, Owner, SideNamed, SideRef, SideSame
from grammar.sentences.determiners import ALL


def of_whoever_did_it(reader: Reader, consequence: then.Scores, moment: Moment) -> AnySide:
    """Whose points these are, if not its owner's: where each plays for themselves "its side" means nobody then. Raises
    Senseless."""
    side = consequence.side
    if not reader.solo or moment.actor is None:
        return side
    meant = whose_side(reader.game, side).whose
    if meant is Whose.KEEPER or (isinstance(side, SideNamed) and side.name.text not in ACTORS and meant is Whose.NAMED):
        title = "`{said}`: each plays for themselves, and one of them scores."
        raise Senseless(side, title, write("the thrower's side"))
    if not isinstance(side, SideRef | SideSame):
        return side
    title = "`{said}` is nobody here: each plays for themselves, and whose a target is, is not known."
    hint = "Say what who did it wins or loses (the thrower's side), or give each their own: 1 cone for each player."
    raise Senseless(side, title, hint)


def of_its_owner(reader: Reader, consequence: then.Scores, moment: Moment) -> bool:
    """Whether "its side" is whoever has the thing that is knocked, or is hit or touched, where each plays for
    themselves."""
    side, trigger = consequence.side, moment.trigger
    own = (*OWN_WORDS, "that")
    its = isinstance(side, SideSame) or (isinstance(side, SideRef) and side.determiner in own and not side.other)
    if its and reader.solo and moment.result in ON_A_PLAYER:
        return True
    if not its or moment.result is not Result.KNOCKED or not reader.solo:
        return False
    owners = {thing.owner for thing in trigger.to if isinstance(thing, Thing)} if isinstance(trigger, Happening) else {}
    return bool(owners) and SHARED not in owners


def others_of_doer(reader: Reader, phrase: Node | None, moment: Moment) -> frozenset[SideId]:
    """ "Each other side": all but that of who did it, where it is done to nobody. Else none."""
    doer = moment.actor or moment.of_each
    if not isinstance(phrase, SideRef | Owner) or not phrase.other or phrase.determiner not in ALL or doer is None:
        return frozenset()
    return reader.others(doer) if moment.result in (None, Result.MISSED, Result.LEFT) else frozenset()
