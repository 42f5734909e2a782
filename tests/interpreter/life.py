"""Lives as the second reader has them: how many each pupil has, and what comes of one less or more."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.sentences import lives, when
from tests.interpreter.board import IN, Board, State
from tests.interpreter.events import Scene, Settled, holding
from tests.interpreter.names import Folk
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose


@remembered
def most_lives(sheet: Sheet, side: str, role: str) -> int:
    """How many lives a pupil of a side and role has at most; 0 where they are not counted."""
    lines = [line for line in sheet.tree.all_of("sides", lives.HasLives) if _meant(sheet, line, side, role)]
    return max(lines, key=lambda line: _narrow(sheet, line)).number.whole if lines else 0


def _narrow(sheet: Sheet, line: lives.HasLives) -> int:
    """How much a line names: a task, a side."""
    folk = sheet.meaning(line.who.name)
    assert isinstance(folk, Folk)
    return int(folk.role is not None) + int(folk.side is not None or isinstance(whose(sheet, line.who), Of))


def _meant(sheet: Sheet, line: lives.HasLives | lives.LastLife, side: str, role: str) -> bool:
    folk, said = sheet.meaning(line.who.name), whose(sheet, line.who)
    assert isinstance(folk, Folk)
    of = said.side if isinstance(said, Of) else folk.side
    return of in (None, side) and folk.role in (None, role)


def in_full(sheet: Sheet, state: State) -> State:
    """Whoever has come into play has all lives."""
    if not any(True for _ in sheet.tree.all_of("sides", lives.HasLives)):
        return state
    most = [most_lives(sheet, each.side, each.role) if each.where == IN else each.lives for each in state.pupils]
    if all(0 < each.lives <= full or each.lives == full for each, full in zip(state.pupils, most, strict=True)):
        return state
    pupils = (each._replace(lives=min(each.lives or full, full)) for each, full in zip(state.pupils, most, strict=True))
    return state._replace(pupils=tuple(pupils))


def lose_or_win(sheet: Sheet, said: lives.LosesLife | lives.WinsLife, chosen: Sequence[int], board: Board) -> list[int]:
    """One life less or more for each of them; gives those who have lost the last."""
    last = []
    for number in chosen:
        pupil = board.pupils[number]
        most = most_lives(sheet, pupil.side, pupil.role)
        if not most or pupil.where != IN:
            continue
        if isinstance(said, lives.WinsLife):
            board.pupils[number] = pupil._replace(lives=min(pupil.lives + 1, most))
        elif pupil.lives > 1:
            board.pupils[number] = pupil._replace(lives=pupil.lives - 1)
        else:
            last.append(number)
    return last


def after_the_last(sheet: Sheet, number: int, board: Board) -> tuple[Scene, list[Settled]]:
    """What the rules say of a pupil who has lost the last life."""
    pupil = board.pupils[number]
    scene = Scene(pupil.side, sheet.only_other(pupil.side), keeping=pupil.side, loser=number)
    return scene, holding(sheet, scene, list(_rules(sheet, pupil.side, pupil.role)), board)


def _rules(sheet: Sheet, side: str, role: str) -> Iterator[tuple[when.When, bool, int]]:
    for granted in (False, True):
        for rule in sheet.said(when.When, granted=granted):
            event = rule.event
            if isinstance(event, lives.LastLife) and _meant(sheet, event, side, role):
                folk = sheet.meaning(event.who.name)
                assert isinstance(folk, Folk)
                yield rule, not granted, int(folk.role is not None) + int(folk.side is not None)
