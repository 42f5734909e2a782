"""A round as the interpreter plays it: what can happen next, what follows at once, and when it is over."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from grammar.sentences import finish, when
from grammar.sentences.base import Np, SideNamed
from tests.interpreter.applying import resting
from tests.interpreter.board import RESULT, Counts, State, ball, kept, move, points
from tests.interpreter.claims import claimed, true
from tests.interpreter.clock import acts
from tests.interpreter.deeds import BECAME, Deed, deeds
from tests.interpreter.follows import carried_out, follow
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet

TURNS = 16
DRAW = "a draw"


@frozen
class Next:
    """One move: words that any telling of it must hold, and the state after it."""

    told: tuple[str, ...]
    state: State


def start(sheet: Sheet) -> State:
    """The state at the set-up."""
    return kept(set_up(sheet))


def successors(sheet: Sheet, state: State) -> Iterator[Next]:
    """All that can happen in a state that is not over."""
    counts = dict(state)
    for deed in deeds(sheet, counts):
        for after in carried_out(sheet, deed, counts):
            yield Next(deed.told(), kept(_settled(sheet, counts, after)))
    for act in acts(sheet, counts):
        yield Next(act.told, kept(_settled(sheet, counts, act.after)))


def _settled(sheet: Sheet, before: Counts, after: Counts) -> Counts:
    """What follows at once from counts that became so, turn by turn, until nothing new has become so."""
    rules = [rule for rule in sheet.said(when.When) if isinstance(rule.event, when.Becomes)]
    for _ in range(TURNS):
        due = [
            (rule, side)
            for rule in rules
            for side in _spoken_of(sheet, rule)
            if _so(sheet, rule, side, after) and not _so(sheet, rule, side, before)
        ]
        if not due:
            break
        before, after = after, dict(after)
        for rule, side in due:
            deed = Deed(side, None, sheet.others(side)[0], "", BECAME)
            follow(sheet, rule, deed, after)
            _send_balls(sheet, rule, deed, after)
    return after


def _spoken_of(sheet: Sheet, rule: when.When) -> tuple[str, ...]:
    assert isinstance(rule.event, when.Becomes)
    return sheet.sides[:1] if isinstance(rule.event.claim.side, SideNamed) else sheet.sides


def _so(sheet: Sheet, rule: when.When, side: str, counts: Counts) -> bool:
    assert isinstance(rule.event, when.Becomes)
    return claimed(sheet, rule.event.claim, side, counts) and (
        rule.condition is None or true(sheet, rule.condition, side, counts)
    )


def _send_balls(sheet: Sheet, rule: when.When, deed: Deed, counts: Counts) -> None:
    """Balls that such a rule sends somewhere come from wherever they lie."""
    for said in rule.consequences:
        if not isinstance(said, when.MovesTo) or not isinstance(said.who, Np) or not sheet.is_ball(said.who):
            continue
        for line in sheet.lines(sheet.game.meaning(said.who.name), "ball"):
            goal = ball(line.name, resting(sheet, said.place, deed))
            for name in [name for name in counts if name.startswith(f"ball/{line.name}/") and name != goal]:
                move(counts, name, goal, None if said.who.determiner == "all" else 1)


def result(sheet: Sheet, state: State) -> str | None:
    """Who has won in a state ("a draw" for nobody), None while play goes on."""
    counts = dict(state)
    wins = list(_results(sheet, counts))
    sides = {winner for winner in wins if winner != DRAW}
    both = next(iter(sheet.said(finish.BothAtOnce)), None)
    if both is not None and len(sides) > 1:
        return _one_result(sheet, both.result, sheet.sides[0])
    if counts.get(RESULT, 0):
        return sheet.sides[counts[RESULT] - 1]
    return wins[0] if wins else None


def _results(sheet: Sheet, counts: Counts) -> Iterator[str]:
    """What every line of the finish says in a state, in the order of the sheet."""
    for line in sheet.game.sentences("finish"):
        match line:
            case finish.FirstTo():
                yield from (side for side in sheet.sides if counts.get(points(side), 0) >= line.points.whole)
            case finish.WinWhen() | finish.LoseWhen():
                for side in _sides(sheet, line):
                    if true(sheet, line.condition, side, counts):
                        yield from (side,) if isinstance(line, finish.WinWhen) else sheet.others(side)
            case finish.EndsWhen():
                for side in sheet.sides:
                    if true(sheet, line.condition, side, counts):
                        yield _one_result(sheet, line.result, side)


def _sides(sheet: Sheet, line: finish.WinWhen | finish.LoseWhen) -> tuple[str, ...]:
    if isinstance(line.side, SideNamed):
        return (sheet.side_in(line.side, sheet.sides[0], sheet.sides[-1], {}),)
    return sheet.sides


def _one_result(sheet: Sheet, said: finish.Result | None, side: str) -> str:
    if isinstance(said, finish.SideWins):
        return sheet.side_in(said.side, side, sheet.others(side)[0], {})
    assert not isinstance(said, finish.MoreWins), "the interpreter counts nobody's lead before the bell yet"
    return DRAW


@frozen
class Seen:
    """A state that play can reach: its result, the moves out of it, and how many lead there at least."""

    result: str | None
    moves: tuple[Next, ...]
    distance: int


def reachable(sheet: Sheet, limit: int = 100_000) -> dict[State, Seen]:
    """Every state that play can reach, nearest first."""
    found: dict[State, Seen] = {}
    distance = {start(sheet): 0}
    queue = [start(sheet)]
    for state in queue:
        over = result(sheet, state)
        moves = tuple(successors(sheet, state)) if over is None else ()
        found[state] = Seen(over, moves, distance[state])
        for after in moves:
            if after.state not in distance:
                assert len(distance) < limit, "too many states for plain Python"
                distance[after.state] = distance[state] + 1
                queue.append(after.state)
    return found
