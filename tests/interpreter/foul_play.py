"""What happens against the rules, or all at once: a ball held too long, a foul, everyone holding a ball."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import events, then, when
from grammar.sentences.fouls import Fouls
from tests.interpreter.act import Act
from tests.interpreter.board import Board, State
from tests.interpreter.deeds import alike
from tests.interpreter.events import Scene, holding
from tests.interpreter.follows import follow
from tests.interpreter.landing import about_balls, goal
from tests.interpreter.narrow import of_player
from tests.interpreter.rows import lose_rows
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import at_hand


def held(sheet: Sheet, board: Board, begin: State, everyone: bool) -> Iterator[Act]:
    """A ball that somebody has at hand may be kept too long, if the sheet says what follows."""
    for side in sheet.sides:
        hands = {spot for n in board.playing((side,)) for spot in at_hand(sheet, side, board.pupils[n].role)}
        scene = Scene(sheet.only_other(side), sheet.only_other(side), side)
        for number in alike(((each, n) for n, each in enumerate(board.balls) if each.spot in hands), everyone):
            rules = _kept_too_long(sheet, board.balls[number].kind)
            settled = holding(sheet, scene, rules, board)
            after = board.copy()
            for each in settled:
                if isinstance(each.said, then.MovesTo) and about_balls(sheet, each.said):
                    there = goal(sheet, each.said.place, scene, sent=sheet.only_other(side), rule=True)
                    after.balls[number] = after.balls[number]._replace(spot=there)
            rest = [each for each in settled if not about_balls(sheet, each.said)]
            if len(rest) < len(settled):
                lose_rows(sheet, side, after)
            if settled:
                yield from (Act(("too long",), done) for done in follow(sheet, rest, scene, after, begin))


def _kept_too_long(sheet: Sheet, kind: str) -> list[tuple[when.When, bool, int]]:
    """The rules for a ball of a kind that is kept too long, with how narrowly they speak of it."""
    found = []
    for rule in sheet.said(when.When):
        if isinstance(rule.event, events.HeldLong) and kind in (stuff := sheet.stuff(rule.event.what)).kinds:
            found.append((rule, True, int(stuff.named)))
    return found


def fouled(sheet: Sheet, board: Board, begin: State, everyone: bool) -> Iterator[Act]:
    """Anybody in play may foul, if the sheet says what follows."""
    lines = [rule for rule in sheet.said(when.When) if isinstance(rule.event, Fouls)]
    for number in alike(((board.pupils[each], each) for each in board.playing(sheet.sides)), everyone):
        side, role = board.pupils[number].side, board.pupils[number].role
        named = [(rule, of_player(sheet, rule.event.who, side, role, side)) for rule in lines]
        rules = [(rule, True, narrow) for rule, narrow in named if narrow is not None]
        for other in sheet.others(side) if not sheet.solo else (None,):
            scene = Scene(other, other, side, loser=number, having=side)
            settled = holding(sheet, scene, rules, board)
            after = board.copy()
            if any(about_balls(sheet, each.said) for each in settled):
                lose_rows(sheet, side, after)
            if settled:
                yield from (Act(("foul",), done) for done in follow(sheet, settled, scene, after, begin))


def all_hold(sheet: Sheet, board: Board, begin: State) -> Iterator[Act]:
    """Every pupil in play holds a ball: possible while there are balls enough."""
    rules = [(rule, True, 0) for rule in sheet.said(when.When) if isinstance(rule.event, events.EveryoneHolds)]
    playing = board.playing(sheet.sides)
    if rules and 0 < len(playing) <= len(board.balls):
        scene = Scene(None, None, everybody=True)
        settled = holding(sheet, scene, rules, board)
        if settled:
            yield from (Act(("everyone holds",), done) for done in follow(sheet, settled, scene, board.copy(), begin))
