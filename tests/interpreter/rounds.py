"""A round as the second reader plays it: what can happen next, what follows at once, and when it is over."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from grammar.sentences import events, finish, queues, then, when
from grammar.sentences.base import Node, SideRef
from grammar.sentences.runs import InARow
from tests.interpreter.at_the_end import leader
from tests.interpreter.board import Board, State, alike, in_line
from tests.interpreter.claims import claimed, spoken_of, times_become_so, true
from tests.interpreter.clock import acts
from tests.interpreter.deeds import REACHED, Deed, deeds
from tests.interpreter.events import Scene, Settled, holding, rules_for, scene_of, taking
from tests.interpreter.follows import follow
from tests.interpreter.hours import clock, holds_now, moments, next_point
from tests.interpreter.landing import landings
from tests.interpreter.life import in_full
from tests.interpreter.loads import take_up
from tests.interpreter.rows import asked, rows_of
from tests.interpreter.runs import count_row
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of
from tests.interpreter.strikes import strikes
from tests.interpreter.whose import OTHERS, Of, side_said

TURNS = 16
DRAW = "a draw"


@frozen
class Next:
    """One move: words that any telling of it must hold, and the state after it."""

    told: tuple[str, ...]
    state: State


class Round:
    """The rounds of one sheet. With `everyone` every pupil, ball and thing plays by itself and keeps its name;
    else those that stand alike take turns, and one of them plays for all."""

    def __init__(self, sheet: Sheet, everyone: bool = False) -> None:
        self.sheet = sheet
        self.everyone = everyone
        self.in_turn = frozenset(
            place_of(sheet, each.where) for line in sheet.said(queues.Free) for each in _first_or_last(line.queued)
        ) | frozenset(
            place_of(sheet, each.where)
            for rule in sheet.said(when.When)
            for said in rule.consequences
            for who in (getattr(said, "who", None), getattr(said, "other", None))
            for each in _first_or_last(who, any_line=isinstance(said, then.ChangesPlaces))
        )
        self.begin = self._kept(set_up(sheet)._replace(rows=(0,) * len(rows_of(sheet))))

    def _kept(self, state: State) -> State:
        ordered = in_line(in_full(self.sheet, state), self.in_turn if self.sheet.orderly else frozenset())
        return ordered if self.everyone else alike(ordered)

    def successors(self, state: State) -> Iterator[Next]:
        """All that can happen in a state that is not over."""
        board = Board(state)
        for deed in deeds(self.sheet, board, self.everyone):
            for after in self.carried_out(deed, board):
                yield from self._settled(deed.told(board), board, after)
        for told, after in strikes(self.sheet, board, self.begin):
            yield from self._settled((told,), board, after)
        for act in acts(self.sheet, board, self.begin, self.everyone):
            yield from self._settled(act.told, board, act.after)

    def carried_out(self, deed: Deed, board: Board) -> Iterator[Board]:
        """First the ball flies, or the load is brought, then the rules that hold are followed."""
        sheet = self.sheet
        scene = scene_of(sheet, deed, board)
        settled = holding(sheet, scene, rules_for(sheet, deed, board), board)
        flies = deed.ball is not None and deed.load is None
        for spot in landings(sheet, deed, scene, settled) if flies else [None]:
            after = board.copy()
            if deed.load is not None and deed.ball is not None:
                take_up(after, deed.actor, deed.ball, deed.load)
            elif deed.load is not None:
                after.put_down(deed.actor, deed.load.goal)
            if deed.ball is not None and spot is not None:
                after.balls[deed.ball] = after.balls[deed.ball]._replace(spot=spot)
            if deed.aim.carried_for_good and deed.outcome == REACHED and deed.aim.thing is not None:
                load = after.things[deed.aim.thing]
                after.things[deed.aim.thing] = load._replace(brought=True, spot=deed.aim.spot)
            for done in follow(sheet, settled, scene, after, self.begin):
                count_row(sheet, deed, done)
                yield done

    def _settled(self, told: tuple[str, ...], before: Board, after: Board, turn: int = 0) -> Iterator[Next]:
        """What follows at once from counts that became so, turn by turn, until nothing new has become so."""
        due = self._due(before, after) if turn < TURNS else []
        if not due:
            yield Next(told, self._kept(after.state()))
            return
        boards = [after.copy()]
        for rule, side in due:
            other = self.sheet.only_other(side)
            scene = Scene(side, other, side, having=side if isinstance(rule.event, InARow) else None)
            settled = [Settled(said) for said in (*rule.consequences, *taking(self.sheet, rule))]
            if isinstance(rule.event, InARow):
                settled = holding(self.sheet, scene, [(rule, True, 0)], after)
                for each in boards:
                    each.rows[rows_of(self.sheet).index((rule, side))] = 0
            boards = [done for each in boards for done in follow(self.sheet, settled, scene, each, self.begin)]
        for done in boards:
            yield from self._settled(told, after, done, turn + 1)

    def _due(self, before: Board, after: Board) -> list[tuple[when.When, str]]:
        rows = list(zip(rows_of(self.sheet), before.rows, after.rows, strict=True))
        found = []
        for rule in self.sheet.said(when.When):
            if isinstance(rule.event, events.Becomes):
                sides = self._spoken_of(rule.event)
                for side in (each for each in sides if self._so(rule, each, after)):
                    was = before if self._so(rule, side, before) else None
                    found += [(rule, side)] * times_become_so(self.sheet, rule.event.claim, side, was, after)
            found += [(each, s) for (each, s), was, now in rows if each is rule and was < asked(rule) <= now]
        return found

    def _spoken_of(self, event: events.Becomes) -> tuple[str, ...]:
        said = side_said(self.sheet, event.claim.side)
        return (said.side,) if isinstance(said, Of) else self.sheet.sides

    def _so(self, rule: when.When, side: str, board: Board) -> bool:
        assert isinstance(rule.event, events.Becomes)
        spoken = spoken_of(self.sheet, side)
        return (
            claimed(self.sheet, rule.event.claim, spoken, board)
            and holds_now(self.sheet, rule, board)
            and (rule.condition is None or true(self.sheet, rule.condition, spoken, board))
        )

    def result(self, state: State) -> str | None:
        """Who has won in a state ("a draw" for nobody), None while play goes on."""
        board = Board(state)
        wins = list(self._results(board))
        sides = {winner for winner in wins if winner != DRAW}
        both = next(iter(self.sheet.said(finish.BothAtOnce)), None)
        if both is not None and len(sides) > 1:
            return self.decided((both.result,), None, board)
        return state.won or (wins[0] if wins else None)

    def winners(self, state: State) -> set[str]:
        """Every side that wins in a state by some line of the finish."""
        return {winner for winner in self._results(Board(state)) if winner != DRAW}

    def at_the_bell(self, state: State) -> str | None:
        """What the clock says in a state; None where there is none, or where it has not come so far yet."""
        after = clock(self.sheet)
        if next_point(self.sheet) or state.clock < len(moments(self.sheet)):
            return None
        return self.decided(after.results, None, Board(state)) if after is not None else None

    def _results(self, board: Board) -> Iterator[str]:
        """What every line of the finish says in a state, in the order of the sheet."""
        for line in self.sheet.said(Node):
            match line:
                case finish.FirstTo():
                    points = zip(self.sheet.sides, board.points, strict=True)
                    yield from (side for side, number in points if number >= line.points.whole)
                case finish.WinWhen() | finish.LoseWhen():
                    yield from self._won(line, board)
                case finish.EndsWhen():
                    for side in self.sheet.sides:
                        if true(self.sheet, line.condition, spoken_of(self.sheet, side), board):
                            yield self.decided((line.result,) if line.result else (), side, board)
        yield from self._leads_at_last(board)

    def _leads_at_last(self, board: Board) -> Iterator[str]:
        """Where a level score is played on when the clock is over, whoever leads then has won."""
        if next_point(self.sheet) and board.clock == len(moments(self.sheet)):
            best = [side for side, n in zip(self.sheet.sides, board.points, strict=True) if n == max(board.points)]
            yield from best if len(best) == 1 else ()

    def _won(self, line: finish.WinWhen | finish.LoseWhen, board: Board) -> Iterator[str]:
        """A side that has what is asked for wins or loses; "the other side wins when a side has ..." turns it round."""
        said = side_said(self.sheet, line.side)
        turned = said == OTHERS
        for side in (said.side,) if isinstance(said, Of) else self.sheet.sides:
            if true(self.sheet, line.condition, spoken_of(self.sheet, side), board):
                others = self.sheet.others(side) if not self.sheet.solo else ()
                yield from (side,) if isinstance(line, finish.WinWhen) != turned else others

    def decided(self, results: tuple[finish.Result, ...], side: str | None, board: Board) -> str:
        """The first of several results that decides; a draw where none does."""
        for result in results:
            match result:
                case finish.Draw() | finish.NobodyWins():
                    return DRAW
                case finish.SideWins(side=SideRef() as phrase) if side is not None:
                    return self.sheet.others(side)[0] if phrase.other else side
                case finish.SideWins():
                    said = side_said(self.sheet, result.side)
                    assert isinstance(said, Of), result.words()
                    return said.side
                case finish.SideLoses(side=phrase):
                    lost = said.side if isinstance(said := side_said(self.sheet, phrase), Of) else side
                    return next((each for each in self.sheet.sides if each != lost), DRAW)
                case finish.BestWins() | finish.LeftWin():
                    return self.sheet.sides[0]
                case finish.MoreWins():
                    if (first := leader(self.sheet, result, board)) is not None:
                        return first
        return DRAW


def _first_or_last(who: object, any_line: bool = False) -> list[queues.Queued | queues.AllQueued]:
    """A phrase for the first or the last of a line, or (`any_line`) for all in it, in their order."""
    if isinstance(who, queues.Queued) or (any_line and isinstance(who, queues.AllQueued)):
        return [who]
    return []


@frozen
class Seen:
    """A state that play can reach: its result, the moves out of it, and how many lead there at least."""

    result: str | None
    moves: tuple[Next, ...]
    distance: int


class TooManyError(Exception):
    """More states than plain Python is asked to look at."""


def reachable(rounds: Round, limit: int = 100_000) -> dict[State, Seen]:
    """Every state that play can reach, nearest first."""
    found: dict[State, Seen] = {}
    distance = {rounds.begin: 0}
    queue = [rounds.begin]
    for state in queue:
        over = rounds.result(state)
        moves = tuple(rounds.successors(state)) if over is None else ()
        found[state] = Seen(over, moves, distance[state])
        for after in moves:
            if after.state not in distance:
                if len(distance) >= limit:
                    raise TooManyError
                distance[after.state] = distance[state] + 1
                queue.append(after.state)
    return found
