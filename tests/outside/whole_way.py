"""The whole way: a text in the rule language → game → net → state space → chain → numbers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

import library
from compose.check import StateSpace, explore, markings
from compose.forecast.chain.absorb import Absorbed, absorb
from compose.forecast.chain.bell import Until, until
from compose.forecast.chain.chain import Chain, chain
from compose.forecast.chances.chances import chances
from compose.net.net import Net, Transition
from grammar.game import Game
from tests.interpreter.sheets import game_in, net_in


class Played:
    """One text with everything that follows from it, for so many players of each side."""

    def __init__(self, text: str | Game, players: Mapping[str, int]) -> None:
        self.game = game_in(text) if isinstance(text, str) else text
        self.net: Net = net_in(self.game, players)

    @cached_property
    def space(self) -> StateSpace:
        """Everything that play can reach."""
        space = explore(self.net)
        assert isinstance(space, StateSpace) and space.complete
        return space

    @cached_property
    def constants(self) -> NDArray[np.float64]:
        """Events a minute of each transition at factor 1."""
        return chances(self.net, library.norms(), library.kit_names())

    @cached_property
    def chain(self) -> Chain:
        """The chain with those rates."""
        return chain(self.space, self.constants)

    @cached_property
    def absorbed(self) -> Absorbed:
        """How play ends where no clock ends it."""
        return absorb(self.chain)

    def until(self, minutes: float) -> Until:
        """Play cut off after so many minutes, with the results that the text gives for the clock."""
        return until(self.chain, minutes, self.net.bell.results if self.net.bell else ())

    def wins(self, side: str) -> float:
        """The chance that the side wins by an end of play."""
        return sum(float(p) for p, end in zip(self.absorbed.by_end, self.net.ends, strict=True) if end.winner == side)

    def happens(self, chosen: Callable[[Transition], bool]) -> float:
        """How often the chosen transitions happen in a round, on average."""
        return sum(
            float(often)
            for often, transition in zip(self.absorbed.firings, self.net.transitions, strict=True)
            if chosen(transition)
        )

    def steps(self) -> float:
        """How many moves that change something a round has on average (moves back to the same state left out)."""
        moving = self.space.sources() != self.space.targets
        return float((self._edge_firings() * moving).sum())

    def at_end(self, place: str) -> dict[tuple[int | None, int], float]:
        """The distribution of (number of the end, count of the place) when play ends."""
        column = [each.name for each in self.net.places].index(place)
        counts = markings(self.space, np.arange(self.space.states))[:, column]
        stopped = self.space.ended()[self.space.targets]
        found: dict[tuple[int | None, int], float] = {}
        for target, weight in zip(self.space.targets[stopped], self._edge_firings()[stopped], strict=True):
            key = int(self.space.end_of[target]), int(counts[target])
            found[key] = found.get(key, 0.0) + float(weight)
        return found

    def _edge_firings(self) -> NDArray[np.float64]:
        spent = np.zeros(self.space.states)
        spent[self.chain.running] = self.absorbed.time
        return spent[self.space.sources()] * self.chain.rates
