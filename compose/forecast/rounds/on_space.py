"""Many rounds played at random on an explored space: a move is a look at a table, not a reckoning.

The same play as in `rounds` (the direct method), many times as quick. Only waits are kept; all else is worked
out exactly where the space is known.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from compose.check.effect import Act, Column, Columns
from compose.check.reactions import Reactions
from compose.check.space import StateSpace
from compose.forecast.chain.chain import Bools, Floats, Longs, tick_chances
from compose.forecast.rounds.fixed_waits import place_left
from compose.forecast.rounds.ticks import Ticking
from compose.forecast.rounds.wait_log import WaitLog
from compose.net.net import Effect, Move
from grammar.frozen import frozen


@frozen(eq=False)
class Traffic:
    """How many come to a place and how many leave it on every edge, both (edges,)."""

    entered: Longs
    left: Longs


class SpaceRounds:
    """The rounds; `minutes` (rounds,) is the time played, `log` keeps the waits in the watched places.

    Raises ValueError for a space that is not whole: play would leave it.
    """

    def __init__(
        self,
        space: StateSpace,
        constants: ArrayLike,
        rounds: int,
        chance: np.random.Generator,
        minutes: float = math.inf,
        watched: tuple[int, ...] = (),
    ) -> None:
        if not space.complete:
            raise ValueError("the space is not whole; rounds would leave it")
        self.minutes = np.zeros(rounds)
        self.log = WaitLog(space.net, watched, rounds)
        self._left_by_time = np.array([place_left(each) for each in space.net.transitions])
        self._clock_minutes = minutes
        self._chance = chance
        self._space = space
        self._ended = space.ended()
        self._traffic = {place: traffic(space, place) for place in watched}
        self._rates = rates = space.factors * np.asarray(constants, dtype=np.float64)[space.transitions]
        rates[~self._changing()] = 0.0
        self._ticking = Ticking(space.net, rounds)
        self._tick_chances = tick_chances(space)[0]
        self._ticked_to = np.concatenate([[0.0], np.cumsum(self._tick_chances)])
        self._reached = np.concatenate([[0.0], np.cumsum(rates)])
        self._total = np.bincount(space.sources(), rates, minlength=space.states)
        self._live: Longs = np.arange(rounds)
        self._state: Longs = np.zeros(rounds, dtype=np.int64)
        self._stop(self._ended[self._state])

    @property
    def running(self) -> int:
        """How many rounds are not over yet."""
        return len(self._live)

    def step(self) -> None:
        """One event in every round that runs, or the clock, whichever comes first."""
        live, state = self._live, self._state
        wait = np.full(len(live), math.inf)
        total = self._total[state]
        np.divide(self._chance.exponential(size=len(live)), total, out=wait, where=total > 0)
        ticks = self._ticking.due(live)
        ticked = (wait >= ticks - self.minutes[live]) & (ticks < self._clock_minutes)
        left = np.minimum(ticks, self._clock_minutes) - self.minutes[live]
        over = ~ticked & ((wait >= left) | np.isinf(wait))
        self.minutes[live] += np.where(np.isinf(wait) & np.isinf(left), 0.0, np.minimum(wait, left))
        for some, reached in ((~over & ~ticked, self._reached), (ticked, self._ticked_to)):
            edge = self._drawn(state[some], reached)  # where nothing can happen there is no edge to draw
            self._state[some] = self._space.targets[edge]
            self._note(live[some], edge)
        self._ticking.passed[live[ticked]] += 1
        self._stop(over | self._ended[self._state])

    def comings(self, place: int, spent: Floats, moments: Floats | None) -> float:
        """How many come to a watched place in a round, those there at the set-up included, for so many minutes
        `spent` (states,) in each state and so many `moments` (states,) of the clock there: no matter of chance."""
        of_edges = spent[self._space.sources()] * self._rates
        if moments is not None:
            of_edges = of_edges + moments[self._space.sources()] * self._tick_chances
        return self._space.net.places[place].start + float(of_edges @ self._traffic[place].entered)

    def _drawn(self, state: Longs, reached: Floats) -> Longs:
        """An edge out of each state, with a chance in proportion to its rate."""
        first, last = self._space.offsets[state], self._space.offsets[state + 1]
        low, high = reached[first], reached[last]
        edge = np.searchsorted(reached, low + self._chance.random(len(state)) * (high - low), side="right") - 1
        return np.asarray(np.clip(edge, first, np.maximum(first, last - 1)), dtype=np.int64)

    def _note(self, rows: Longs, edge: Longs) -> None:
        for place, through in self._traffic.items():
            entered, left = through.entered[edge], through.left[edge]
            some = (entered > 0) | (left > 0)
            self.log.rows = rows[some]
            self.log.now = self.minutes[self.log.rows]
            self.log.by_time = self._left_by_time[self._space.transitions[edge[some]]]
            self.log.passed(place, entered[some], left[some])

    def _changing(self) -> Bools:
        """The edges on which anything happens."""
        changing: Bools = self._space.sources() != self._space.targets
        for through in self._traffic.values():
            changing |= (through.entered > 0) | (through.left > 0)
        return changing

    def _stop(self, over: Bools) -> None:
        if not over.any():
            return
        done = self._live[over]
        self.log.stop(done, self.minutes[done])
        self._live, self._state = self._live[~over], self._state[~over]


def traffic(space: StateSpace, place: int) -> Traffic:
    """The traffic of a place: the difference of its counts, but where a move may go both in and out."""
    counts = space.encoding.markings(space.codes)[:, place].astype(np.int64)
    change = counts[space.targets] - counts[space.sources()]
    entered, left = np.maximum(change, 0), np.maximum(-change, 0)
    follow = [effect for reaction in space.net.reactions for effect in reaction.effects]
    for number, transition in enumerate(space.net.transitions):
        effects = (*transition.effects, *follow)
        if any(_enters(each, place) for each in effects) and any(_leaves(each, place) for each in effects):
            edges = np.flatnonzero(space.transitions == number)
            came, went = carried_out(space, place, transition.effects, edges)
            only_through = np.maximum(went - counts[space.sources()[edges]], 0)  # who has not waited
            entered[edges], left[edges] = came - only_through, went - only_through
    return Traffic(entered, left)


def _enters(effect: Effect, place: int) -> bool:
    return effect.target == place if isinstance(effect, Move) else effect.place == place


def _leaves(effect: Effect, place: int) -> bool:
    return effect.source == place if isinstance(effect, Move) else effect.place == place


def carried_out(space: StateSpace, place: int, effects: tuple[Effect, ...], edges: Longs) -> tuple[Longs, Longs]:
    """Who comes and who leaves on some edges of one transition, found by carrying it out once more."""
    entered, left = np.zeros(len(edges), dtype=np.int64), np.zeros(len(edges), dtype=np.int64)

    def carried(source: int | None, target: int, moved: Column) -> None:
        if target == place:
            np.add(entered, np.maximum(moved, 0), out=entered)
            np.add(left, np.maximum(-moved, 0), out=left)
        if source == place:
            np.add(left, moved, out=left)

    table: NDArray[np.int32] = space.encoding.markings(space.codes[space.sources()[edges]])
    reactions, act = Reactions(space.net), Act(effects, space.net.places)
    for each in (act, *reactions.acts):
        each.carried = carried
    watch, columns = reactions.watch(table), Columns(table, None)
    act.carry_out(columns)
    reactions.follow(watch, columns, None, len(table))
    return entered, left
