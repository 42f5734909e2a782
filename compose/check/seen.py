"""What can be asked of play where something never came: of all situations, of those in which the round goes on, or of
bounds that hold without any being looked at."""

from __future__ import annotations

from typing import Protocol

import numpy as np

from compose.check.condition import Bools, holds
from compose.check.space import Happened
from compose.check.study import Study
from compose.net.net import Comparison, Condition, Net, Reaction, Room, Transition
from grammar.frozen import frozen

Act = Transition | Reaction


class Seen(Protocol):
    """Where to look."""

    @property
    def net(self) -> Net:
        """The net that is played."""
        ...

    @property
    def live(self) -> Seen:
        """The same, only where the round goes on."""
        ...

    @property
    def acts(self) -> tuple[tuple[Act, Happened], ...]:
        """The transitions and then the reactions of the net, each with what it ever does."""
        ...

    def ever(self, condition: Condition) -> bool:
        """Whether a condition holds anywhere."""
        ...

    def fewest(self, place: int) -> int:
        """The smallest count of a place."""
        ...

    def still(self, place: int) -> bool:
        """Whether a place has the count everywhere that it has at the start."""
        ...

    def is_full(self, room: Room, act: Act) -> bool:
        """Whether there is no room whenever a transition happens; not told where that is not known."""
        ...


def any_in(seen: Seen, *places: int) -> bool:
    """Whether there is ever anything in any of these places."""
    return seen.ever(Comparison(tuple((1, place) for place in places), ">=", 1))


@frozen(eq=False)
class InSituations:
    """Where `among` (states,) says."""

    study: Study
    among: Bools

    @property
    def net(self) -> Net:
        return self.study.net

    @property
    def live(self) -> InSituations:
        return in_play(self.study)

    @property
    def acts(self) -> tuple[tuple[Act, Happened], ...]:
        net, space = self.net, self.study.space
        return (*zip(net.transitions, space.happened, strict=True), *zip(net.reactions, space.reacted, strict=True))

    def ever(self, condition: Condition) -> bool:
        return bool((holds(condition, self.study.table) & self.among).any())

    def fewest(self, place: int) -> int:
        return int(self.study.table[self.among, place].min(initial=self.net.places[place].capacity))

    def still(self, place: int) -> bool:
        return bool((self.study.table[self.among, place] == self.net.places[place].start).all())

    def is_full(self, room: Room, act: Act) -> bool:
        numbers = [number for number, each in enumerate(self.net.transitions) if each is act]
        before = self.study.table[self.study.sources[np.isin(self.study.space.transitions, numbers)]]
        return bool(len(before) and (before[:, room.places].sum(axis=1) >= room.most).all())


def everywhere(study: Study) -> InSituations:
    """All that play can come to."""
    return InSituations(study, np.ones(study.space.states, dtype=np.bool_))


def in_play(study: Study) -> InSituations:
    """All in which the round goes on."""
    return InSituations(study, ~study.ended)
