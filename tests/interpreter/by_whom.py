"""Who did it, where a line says so: how narrowly it speaks of them; None where it was somebody else."""

from __future__ import annotations

from grammar.sentences import events, play, when
from grammar.sentences.base import Np, SideRef
from tests.interpreter.board import Board
from tests.interpreter.catching import means_ball
from tests.interpreter.deeds import BLOCKED, CAUGHT, TOUCHING, Deed
from tests.interpreter.names import Folk, Mate, Stuff
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import OTHERS, OWN, SPOKEN, UNSAID, Of, of_a_side, whose


def by_whom(sheet: Sheet, rule: when.When, deed: Deed, board: Board) -> int | None:
    """How much a line says of who did it."""
    doer = rule.doer
    if doer is None or deed.outcome == BLOCKED or (deed.aim.what == "mate" and deed.outcome != CAUGHT):
        return 0
    if isinstance(doer, Np) and isinstance(meant := sheet.meaning(doer.name), Stuff):
        right = deed.ball is not None and means_ball(sheet, doer.name, deed.skill, deed.kind)
        return int(meant.named) + bool(meant.skills) if right else None
    who = deed.catcher if deed.outcome == CAUGHT else deed.actor
    if who is None:
        return None
    side, role = board.pupils[who].side, board.pupils[who].role
    narrow = _of_side(sheet, rule, side, deed, board)
    folk = sheet.folk(doer) if isinstance(doer, Np) and not _mate(sheet, rule) else None
    if narrow is None or folk is None:
        return narrow
    if folk.side not in (None, side) or folk.role not in (None, role):
        return None
    return max(narrow, int(folk.side is not None)) + (folk.role is not None)


def _mate(sheet: Sheet, rule: when.When) -> bool:
    return isinstance(rule.doer, Np) and isinstance(sheet.meaning(rule.doer.name), Mate)


def _of_side(sheet: Sheet, rule: when.When, side: str, deed: Deed, board: Board) -> int | None:
    """Whether somebody of that side is meant: seen from whose thing it is, who is hit, or who sent a ball caught."""
    doer = rule.doer
    if isinstance(doer, when.OwnSide) or _mate(sheet, rule):
        said: object = OWN
    elif isinstance(doer, Np):
        said = whose(sheet, doer)
    else:
        assert isinstance(doer, SideRef)
        said = of_a_side(doer.determiner, doer.other)
    if said == UNSAID:
        return 0
    if isinstance(said, Of):
        return 1 if side == said.side else None
    owner = board.things[deed.aim.thing].owner if deed.aim.thing is not None else deed.aim.concerned
    if deed.aim.hit is not None:
        owner = board.pupils[deed.aim.hit].side
    if said in (OWN, SPOKEN):
        return 1 if side == owner else None
    assert said == OTHERS, rule.words()
    return 1 if side != (deed.side if deed.outcome == CAUGHT else owner) else None


def acts_by_name(sheet: Sheet, who: Np, deed: Deed | None) -> bool:
    """Whether a phrase names who touched by the task: "the tagger", where the event itself is of another pupil."""
    folk = sheet.folk(who)
    if folk is None or folk.role is None or deed is None or deed.skill != TOUCHING:
        return False
    own = {sheet.folk(each.who) for each in sheet.said(play.Touch)}
    return folk in own and not _happens_to(sheet, folk)


def _happens_to(sheet: Sheet, folk: Folk) -> bool:
    """Whether any event is of these pupils being touched or hit."""
    found = (rule.event for rule in sheet.said(when.When))
    return folk in {sheet.folk(each.who) for each in found if isinstance(each, events.Touched | events.Hit)}


def done_by_name(sheet: Sheet, who: Np, deed: Deed | None) -> str | None:
    """Whether a phrase names who did it, or caught it, as "by" names them in a line: "actor" or "catcher"."""
    folk = sheet.folk(who)
    doers = [rule.doer for rule in sheet.said(when.When) if isinstance(rule.doer, Np)]
    if deed is None or folk is None or folk == Folk() or folk not in [sheet.folk(each) for each in doers]:
        return None
    if deed.outcome == CAUGHT:
        return "catcher"
    return "actor" if deed.aim.what == "player" and not _happens_to(sheet, folk) else None
