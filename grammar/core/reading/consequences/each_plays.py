"""Points where each plays for themselves, or of all sides but one: of whoever did something, and of the others."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import OWN_WORDS, Senseless, Whose, whose_side
from grammar.core.rules import ON_A_PLAYER, Happening, Result
from grammar.core.values import SHARED, Shared, SideId, Thing
from grammar.meanings import ACTORS
from grammar.said import write
from grammar.sentences import then
from grammar.sentences.base import AnySide, Name, Node, Owner, SideNamed, SideRef, SideSame
from grammar.sentences.determiners import ALL


def of_whoever_did_it(reader: Reader, consequence: then.Scores, moment: Moment) -> AnySide:
    """Whose points these are, if not its owner's: "its side" means nobody where each plays for themselves, nor of a
    thing that belongs to no side. Raises Senseless."""
    side = consequence.side
    if not reader.solo and _its(side) and _owners(moment) == {SHARED}:
        title = "`{said}` is nobody here: what is knocked belongs to no side."
        raise Senseless(side, title, "Say whose points they are: the thrower's side, or the other side.")
    if not reader.solo or moment.actor is None:
        return side
    if moment.result is Result.ARRIVED and _its(side):  # nobody else takes part
        return SideNamed("the", Name(ACTORS[0], span=side.span), span=side.span)
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
    if not reader.solo or not _its(consequence.side):
        return False
    owners = _owners(moment)
    return moment.result in ON_A_PLAYER or (bool(owners) and SHARED not in owners)


def _its(side: AnySide) -> bool:
    own = (*OWN_WORDS, "that")
    return isinstance(side, SideSame) or (isinstance(side, SideRef) and side.determiner in own and not side.other)


def _owners(moment: Moment) -> set[SideId | Shared]:
    """Whose the things are that are knocked."""
    trigger = moment.trigger
    if moment.result is not Result.KNOCKED or not isinstance(trigger, Happening):
        return set()
    return {thing.owner for thing in trigger.to if isinstance(thing, Thing)}


def others_of_doer(reader: Reader, phrase: Node | None, moment: Moment) -> frozenset[SideId]:
    """ "Each other side": all but that of who did it, where it is done to nobody. Else none."""
    doer = moment.actor or moment.of_each
    if not isinstance(phrase, SideRef | Owner) or not phrase.other or phrase.determiner not in ALL or doer is None:
        return frozenset()
    return reader.others(doer) if moment.result in (None, Result.MISSED, Result.LEFT) else frozenset()
