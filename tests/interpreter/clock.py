"""What happens beside attempts: fetching, freeing, coming back, standing up, holding too long, all holding."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from grammar.meanings import TeacherMeaning
from grammar.sentences import play, when
from grammar.sentences.base import Np, OwnerName
from tests.interpreter.applying import resting
from tests.interpreter.board import IN, Counts, ball, move, player, target, total
from tests.interpreter.deeds import HELD, Deed
from tests.interpreter.follows import follow
from tests.interpreter.sheet import Sheet


@frozen
class Act:
    """Something that happens, in words that any telling must hold, and the counts after it."""

    told: tuple[str, ...]
    after: Counts


def acts(sheet: Sheet, counts: Counts) -> Iterator[Act]:
    """All of it that is possible in a state."""
    for fetch in _fetches(sheet):
        yield from _fetched(sheet, fetch, counts)
    for free in sheet.said(play.Free):
        yield from _freed(sheet, free, counts)
    for said in sheet.said(play.ComesBack):
        yield from _come_back(sheet, said, counts)
    for stand_up in sheet.said(play.StandUp):
        yield from _stood_up(sheet, stand_up, counts)
    for rule in sheet.said(when.When):
        if isinstance(rule.event, when.HeldLong):
            yield from _held(sheet, rule, rule.event, counts)
        elif isinstance(rule.event, when.EveryoneHolds):
            yield from _all_hold(sheet, rule, counts)


def _in_play(sheet: Sheet, side: str, counts: Counts) -> int:
    return total(counts, [player(side, role, IN) for role in sheet.roles(side)])


def _fetches(sheet: Sheet) -> Iterator[play.Fetch]:
    """The sheet's own lines, and those taken for granted about places of which it says nothing."""
    own = list(sheet.said(play.Fetch))
    spoken_of = {each.where.name.text for each in own}
    spoken_of |= {each.where.name.text for each in sheet.said(play.NobodyFetches)}
    yield from own
    for each in sheet.said(play.Fetch, granted=True):
        if each.where.name.text not in spoken_of:
            yield each


def _fetched(sheet: Sheet, fetch: play.Fetch, counts: Counts) -> Iterator[Act]:
    who = sheet.players_meant(fetch.who)
    teacher = isinstance(sheet.game.meaning(fetch.who.name), TeacherMeaning)
    for side in sheet.sides:
        if (who is not None and who.side not in (None, side)) or not (teacher or _in_play(sheet, side, counts)):
            continue
        spot = sheet.spot(fetch.preposition, fetch.where, side, side)
        for line in sheet.lines(sheet.game.meaning(fetch.what.name), "ball"):
            if counts.get(ball(line.name, spot), 0) and spot != sheet.at_hand(side):
                after = dict(counts)
                move(after, ball(line.name, spot), ball(line.name, sheet.at_hand(side)))
                yield Act(("fetches", line.name), after)


def _freed(sheet: Sheet, free: play.Free, counts: Counts) -> Iterator[Act]:
    who = sheet.players_meant(free.who)
    queue = sheet.area(free.queued.where)
    for side in _queues(sheet, free.queued.where):
        if who is not None:
            freers = sheet.roles(side) if who.role is None else (who.role,)
            here = who.side in (None, side) and total(counts, [player(side, role, IN) for role in freers])
            if not here:
                continue
        waiting = [role for role in sheet.roles(side) if counts.get(player(side, role, queue), 0)]
        together = isinstance(free.queued, play.AllQueued)
        for roles in [waiting] * bool(waiting) if together else [[role] for role in waiting]:
            after = dict(counts)
            for role in roles:
                move(after, player(side, role, queue), player(side, role, IN), None if together else 1)
            yield Act(("frees", side), after)


def _come_back(sheet: Sheet, said: play.ComesBack, counts: Counts) -> Iterator[Act]:
    queue = sheet.area(said.where)
    for side in _queues(sheet, said.where):
        for role in sheet.roles(side):
            if counts.get(player(side, role, queue), 0):
                after = dict(counts)
                move(after, player(side, role, queue), player(side, role, IN))
                yield Act(("comes back", queue), after)


def _queues(sheet: Sheet, phrase: Np) -> tuple[str, ...]:
    """One side's queue where the phrase names a side, else everybody's."""
    if phrase.possessive or isinstance(phrase.owner, OwnerName):
        return (sheet.whose(phrase, sheet.sides[0], sheet.sides[0]),)
    return sheet.sides


def _stood_up(sheet: Sheet, stand_up: play.StandUp, counts: Counts) -> Iterator[Act]:
    who = sheet.players_meant(stand_up.who)
    for line in sheet.lines(sheet.game.meaning(stand_up.what.name), "target"):
        for owner in sheet.may_own(line):
            helped = who is None or owner is None or (who.side in (None, owner) and _in_play(sheet, owner, counts))
            if helped and counts.get(target(line.name, owner, "down"), 0):
                after = dict(counts)
                move(after, target(line.name, owner, "down"), target(line.name, owner, "standing"))
                yield Act(("stands up", line.name), after)


def _held(sheet: Sheet, rule: when.When, event: when.HeldLong, counts: Counts) -> Iterator[Act]:
    for side in sheet.sides:
        for line in sheet.lines(sheet.game.meaning(event.what.name), "ball"):
            spot = sheet.at_hand(side)
            if not _in_play(sheet, side, counts) or not counts.get(ball(line.name, spot), 0):
                continue
            deed = Deed(side, None, sheet.others(side)[0], "", HELD, ball=(line.name, spot))
            after = dict(counts)
            for said in rule.consequences:
                if isinstance(said, when.MovesTo) and isinstance(said.who, Np) and sheet.is_ball(said.who):
                    move(after, ball(line.name, spot), ball(line.name, resting(sheet, said.place, deed)))
            follow(sheet, rule, deed, after)
            yield Act(("too long", line.name), after)


def _all_hold(sheet: Sheet, rule: when.When, counts: Counts) -> Iterator[Act]:
    players = sum(_in_play(sheet, side, counts) for side in sheet.sides)
    balls = sum(count for name, count in counts.items() if name.startswith("ball/"))
    if 0 < players <= balls:
        after = dict(counts)
        follow(sheet, rule, Deed(sheet.sides[0], None, sheet.sides[0], "", HELD), after)
        yield Act(("everyone holds",), after)
