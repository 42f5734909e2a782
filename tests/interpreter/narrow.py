"""How narrowly a phrase of an event speaks of what happened: by how much it names; None where it does not."""

from __future__ import annotations

from grammar.sentences import events, then, when
from grammar.sentences.base import Np
from tests.interpreter.aims import carries
from tests.interpreter.board import Board, Spot
from tests.interpreter.catching import means_ball
from tests.interpreter.deeds import TOUCHING, Deed
from tests.interpreter.frozen import frozen_spot, means_frozen
from tests.interpreter.names import Part, Stuff
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of
from tests.interpreter.whose import OTHERS, Of, whose


def owned(sheet: Sheet, phrase: Np, owner: str | None, actor: str) -> int | None:
    """Whether something of an owner is meant, and whether the phrase names the owner."""
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        return 1 if owner == said.side else None
    if isinstance(said, Part):
        return 1 if owner == actor and said.part == "actor" else None
    if said == OTHERS:
        return 1 if owner not in (actor, None) or sheet.solo else None
    return 0


def of_thing(sheet: Sheet, phrase: Np, deed: Deed, board: Board) -> int | None:
    """Of a thing that is knocked."""
    assert deed.aim.thing is not None
    thing, stuff = board.things[deed.aim.thing], sheet.stuff(phrase)
    whose_it_is = owned(sheet, phrase, thing.owner, deed.side)
    return None if whose_it_is is None or thing.kind not in stuff.kinds else whose_it_is + stuff.named


def of_player(sheet: Sheet, phrase: Np, side: str, role: str, actor: str) -> int | None:
    """Of a player who is hit, touched, or arrives."""
    who, theirs = sheet.folk(phrase), owned(sheet, phrase, side, actor)
    if who is None or theirs is None or who.side not in (None, side) or who.role not in (None, role):
        return None
    return max(theirs, int(who.side is not None)) + (who.role is not None)


def of_hit(sheet: Sheet, who: Np, load: Np | None, deed: Deed, board: Board) -> int | None:
    """Of a pupil who is hit or touched, perhaps with something in their hands."""
    assert deed.aim.hit is not None
    hit = board.pupils[deed.aim.hit]
    narrow = of_player(sheet, who, hit.side, hit.role, deed.side)
    if load is None or narrow is None:
        return narrow
    named = load.name.text == "nothing" or sheet.stuff(load).named
    by_its_ball = deed.skill == TOUCHING and deed.kind is not None  # who is touched has it in their hands
    has = deed.kind in sheet.stuff(load).kinds if by_its_ball else carries(sheet, hit, load)
    return narrow + named if has else None


def of_ball(sheet: Sheet, phrase: Np, deed: Deed) -> int | None:
    """Of a ball."""
    stuff = sheet.stuff(phrase)
    if not means_ball(sheet, phrase.name, deed.skill, deed.kind):
        return None
    return int(stuff.named) + bool(stuff.skills)


def of_place(sheet: Sheet, phrase: Np, spot: Spot | None, deed: Deed) -> int | None:
    """Of a place."""
    if spot is None or place_of(sheet, phrase) != spot.place:
        return None
    whose_it_is = owned(sheet, phrase, spot.owner, deed.side)
    return None if whose_it_is is None else 1 + whose_it_is


def of_mate(sheet: Sheet, phrase: Np | None, deed: Deed, board: Board) -> int | None:
    """Of where the team-mate is to whom a pass came, or of one who froze."""
    assert deed.aim.mate is not None
    meant, pupil = means_frozen(sheet, phrase), board.pupils[deed.aim.mate]
    if phrase is None or meant is None:
        return 0 if phrase is None else of_place(sheet, phrase, deed.aim.spot, deed)
    return 1 if pupil.where == frozen_spot(pupil.side) and meant.side in (None, pupil.side) else None


def of_who_arrives(sheet: Sheet, event: events.Arrives, deed: Deed, board: Board) -> int | None:
    """Of who reached where they were going, or of what they brought."""
    meant = sheet.meaning(event.who.name)
    if isinstance(meant, Stuff):
        if deed.aim.thing is not None:
            return of_thing(sheet, event.who, deed, board)
        carried = deed.load.kind if deed.load is not None else deed.kind
        return int(meant.named) if carried in meant.kinds else None
    return 0 if isinstance(meant, Part) else of_player(sheet, event.who, deed.side, deed.role, deed.side)


def plays_on(rule: when.When) -> bool:
    """Whether nothing follows: then nothing does that wider lines say, either."""
    return all(isinstance(each, then.PlaysOn) for each in rule.consequences)
