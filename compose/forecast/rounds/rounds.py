"""Many rounds of one net played at once, event by event.

In each round the next event comes after an exponential time with the sum of all rates, and is one
transition with a chance in proportion to its rate (D. T. Gillespie, "Exact stochastic simulation of coupled
chemical reactions", Journal of Physical Chemistry 81(25), 1977, 2340-2361: the direct method). Attempts that
change nothing are not drawn: how often they and all others happen is counted by their rates over the time
spent, which has the same mean and a smaller spread.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from compose.check.effect import Act, Columns
from compose.check.enabled import Enabling
from compose.check.ends import first_ends
from compose.check.reactions import Reactions
from compose.forecast.chain.chain import Bools, Floats, Longs
from compose.forecast.rounds.fixed_waits import FixedWaits, place_left
from compose.forecast.rounds.in_turn import InTurn
from compose.forecast.rounds.ticks import Ticking
from compose.forecast.rounds.wait_log import WaitLog
from compose.net.net import Move, Net, Transition

RUNNING, CUT, STUCK = -1, -2, -3


class Rounds:
    """The rounds, with what is counted in each.

    `stopped_by` (rounds,) is the number of the end, `CUT` where the clock stopped play, `STUCK` where nothing
    can happen any more and there is no clock, `RUNNING` before that. `minutes` (rounds,) is the time played,
    `tokens` (rounds, places) token minutes, `firings` (rounds, transitions) how often each happens (a mean,
    see above), `last` (rounds, places) the counts when play stopped. `events` counts the events of all rounds.
    With `fixed` whoever waits for a time comes back when it is over, else at any moment alike; their places are
    watched.
    """

    def __init__(
        self,
        net: Net,
        constants: ArrayLike,
        rounds: int,
        chance: np.random.Generator,
        minutes: float = math.inf,
        watched: tuple[int, ...] = (),
        every_event: bool = False,
        spread: float = 0.0,
        fixed: FixedWaits | None = None,
    ) -> None:
        self.net = net
        self.clock_minutes = minutes
        self.events = 0
        self.stopped_by = np.full(rounds, RUNNING, dtype=np.int64)
        self.minutes = np.zeros(rounds)
        self.tokens = np.zeros((rounds, len(net.places)))
        self.firings = np.zeros((rounds, len(net.transitions)))
        self.last = np.tile(np.array(net.start(), dtype=np.int32), (rounds, 1))
        self.log = WaitLog(net, watched, rounds)
        self._constants = np.asarray(constants, dtype=np.float64)
        self._chance = chance
        self._ticking = Ticking(net, rounds)
        self._in_turn = InTurn(net, rounds, spread, chance)
        self._drawn = np.array([every_event or _changes(t, net) for t in net.transitions], dtype=np.bool_)
        self._drawn &= self._in_turn.line_of < 0
        self._fixed = fixed
        if fixed is not None:
            self._drawn[fixed.moves] = False
        self._left_by_time = [place_left(each) for each in net.transitions]
        self._enabling = Enabling(net)
        self._acts = [Act(t.effects, net.places) for t in net.transitions]
        self._reactions = Reactions(net)
        for act in (*self._acts, *self._reactions.acts):
            act.carried = self.log.carried if watched else None
        self._live: Longs = np.arange(rounds)
        self._fired = np.zeros((len(net.transitions), rounds))  # of those that run; `firings` has those that are over
        self._table = np.asfortranarray(self.last)
        self._stop_at_ends()

    @property
    def running(self) -> int:
        """How many rounds are not over yet."""
        return len(self._live)

    def step(self) -> NDArray[np.int64]:
        """One event in every round that runs; gives its transition for each of them (-1: the clock came first)."""
        live, table = self._live, self._table
        enabled, factors = self._enabling.of(table)
        rows, moves = np.nonzero(np.ascontiguousarray(enabled.T))  # most cannot happen: only what can is worked out
        rates = self._constants[moves] * factors[self._enabling.rate_of[moves], rows]
        drawn = rates * self._drawn[moves]
        reached = np.cumsum(drawn)
        total = np.bincount(rows, weights=drawn, minlength=len(live))
        wait = np.full(len(live), math.inf)
        np.divide(self._chance.exponential(size=len(live)), total, out=wait, where=total > 0)
        due, line = self._in_turn.due(live, rows, moves, rates)
        returned, returns = self._returns(live)
        back = due < np.minimum(wait, returned)
        came = returned < np.minimum(wait, due)
        wait = np.minimum(np.minimum(wait, due), returned)
        ticks = self._ticking.due(live)
        ticked = (wait >= ticks - self.minutes[live]) & (ticks < self.clock_minutes)
        left = np.minimum(ticks, self.clock_minutes) - self.minutes[live]
        over = ~ticked & ((wait >= left) | np.isinf(wait))
        spent = np.where(np.isinf(wait) & np.isinf(left), 0.0, np.minimum(wait, left))
        self.minutes[live] += spent
        self.tokens[live] += table * spent[:, None]
        self._fired[moves, rows] += rates * spent[rows]
        last = np.cumsum(enabled.sum(axis=0)) - 1  # of each round the place of its last move in `moves`
        before = np.concatenate([[0.0], reached])[np.concatenate([[0], last[:-1] + 1])]
        found = np.searchsorted(reached, before + self._chance.random(len(live)) * total, side="right")
        chosen = np.where(over, -1, np.append(moves, -1)[np.minimum(found, last)])
        back &= ~over & ~ticked
        self._in_turn.passed(live, spent, back, line)
        chosen[came & ~over & ~ticked] = returns[came & ~over & ~ticked]
        if back.any():
            chosen[back] = self._back(rows, moves, rates, line, back)
        if ticked.any():
            shares = factors[self._enabling.rate_of][:, ticked]
            chances = enabled[:, ticked] * shares * self._ticking.parts[:, None]
            self._fired[:, ticked] += chances
            chosen[ticked] = self._ticking.drawn(chances, self._chance)
            self._ticking.passed[live[ticked]] += 1
        self.events += int((~over).sum())
        self._carry_out(chosen)
        stopped = CUT if math.isfinite(self.clock_minutes) else STUCK
        self._stop(over, np.full(len(live), stopped, dtype=np.int64))
        self._stop_at_ends()
        return chosen

    def _returns(self, live: Longs) -> tuple[Floats, Longs]:
        """The minutes until somebody's time of waiting is over in each round, and the move by which they come back."""
        if self._fixed is None or not len(self._fixed.moves):
            return np.full(len(live), math.inf), np.full(len(live), -1)
        entered = np.array([self.log.first_since(place, live) for place in self._fixed.places])
        return self._fixed.due(entered, self.minutes[live])

    def _back(self, rows: Longs, moves: Longs, rates: Floats, line: Longs, back: Bools) -> Longs:
        """Of all that may come of a run one transition, with a chance in proportion to its rate."""
        own = np.where(self._in_turn.line_of[moves] == line[rows], rates, 0.0)
        shares = np.zeros((len(self._constants), len(line)))
        shares[moves, rows] = own
        return self._ticking.drawn(shares[:, back], self._chance)

    def marking(self, number: int = 0) -> tuple[int, ...]:
        """The counts of one round now."""
        row = np.flatnonzero(self._live == number)
        counts = self._table[row[0]] if row.size else self.last[number]
        return tuple(int(count) for count in counts)

    def _carry_out(self, chosen: Longs) -> None:
        watch = self._reactions.watch(self._table)
        order = np.argsort(chosen, kind="stable")
        numbers, starts = np.unique(chosen[order], return_index=True)
        for number, first, end in zip(numbers, starts, (*starts[1:], len(order)), strict=True):
            if number < 0:
                continue
            rows = order[first:end]
            columns = Columns(self._table, rows)
            self.log.rows, self.log.now = self._live[rows], self.minutes[self._live[rows]]
            self.log.by_time = np.full(len(rows), self._left_by_time[number])
            self._acts[number].carry_out(columns)
            if self.net.reactions:
                self._reactions.follow(watch, columns, rows, len(rows))
            for place in columns.touched:
                self._table[rows, place] = columns(place)

    def _stop_at_ends(self) -> None:
        ends = first_ends(self.net, self._table)[0].astype(np.int64)
        self._stop(ends >= 0, ends)

    def _stop(self, over: NDArray[np.bool_], why: Longs) -> None:
        """Take the rounds that are over out of play."""
        if not over.any():
            return
        done = self._live[over]
        self.stopped_by[done] = why[over]
        self.last[done] = self._table[over]
        self.firings[done] = self._fired[:, over].T
        self.log.stop(done, self.minutes[done])
        self._live = self._live[~over]
        self._fired = self._fired[:, ~over]
        self._table = np.asfortranarray(self._table[~over])


def _changes(transition: Transition, net: Net) -> bool:
    """Whether a transition may change any count."""
    return any(not isinstance(effect, Move) or effect.source != effect.target for effect in transition.effects)
