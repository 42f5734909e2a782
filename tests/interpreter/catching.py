"""Which catches and which balls that leave the court there are: only those of which the sheet says something."""

from __future__ import annotations

from grammar.sentences import attempting, ball, events, resting, when
from grammar.sentences.base import Name
from tests.interpreter.aims import Target
from tests.interpreter.board import Board
from tests.interpreter.names import Stuff
from tests.interpreter.sheet import Sheet


def means_ball(sheet: Sheet, name: Name, skill: str, kind: str | None) -> bool:
    """Whether a word such as "a ball", "a red ball", "a roll" or "a shot" means a ball of a kind by a skill."""
    meant = sheet.meaning(name)
    if not isinstance(meant, Stuff) or meant.category != "ball":
        return False
    return (kind is None or kind in meant.kinds) and (not meant.skills or skill in meant.skills)


def by_other_side(sheet: Sheet, event: events.Event) -> bool:
    """Whether an event is a catch by the other side; a pass that is caught has come to a team-mate."""
    if isinstance(event, ball.Intercepted):
        return True
    if not isinstance(event, events.Caught) or event.where is not None:
        return False
    meant = sheet.meaning(event.what.name)
    return not (isinstance(meant, Stuff) and meant.skills == ("pass",))


def can_be_caught(sheet: Sheet, sentence: attempting.Attempt, skill: str, kind: str | None, aim: Target) -> bool:
    """Whether any rule, resting line of the sheet's own or figure speaks of such a catch."""
    if sentence.told(attempting.CaughtChance) is not None:
        return aim.what != "way"
    if kind is None or aim.what == "way":
        return False
    rules = (rule.event for rule in sheet.said(when.When))
    for event in rules:
        if (
            isinstance(event, events.Caught | ball.Intercepted)
            and by_other_side(sheet, event)
            and (skill == "pass" or not isinstance(event, ball.Intercepted))
            and means_ball(sheet, event.what.name, skill, kind)
        ):
            return True
    rests = (line for line in sheet.said(resting.Rest) if line.state == "caught")
    return any(means_ball(sheet, line.ball, skill, kind) for line in rests)


def catchers(sheet: Sheet, actor: int, aim: Target, board: Board) -> list[int]:
    """Who may catch it: the side against which it goes, never the side of who acts unless all play for themselves."""
    side = board.pupils[actor].side
    sides = sheet.others(side) if aim.concerned is None or aim.concerned == side else (aim.concerned,)
    return [n for n in board.playing(sides) if n != actor and (sheet.solo or board.pupils[n].side != side)]


def can_leave(sheet: Sheet, skill: str, kind: str | None) -> bool:
    """Whether the sheet says what follows when such a ball leaves the court."""
    happened = (rule.event for rule in sheet.said(when.When))
    return any(isinstance(each, events.Leaves) and means_ball(sheet, each.what.name, skill, kind) for each in happened)
