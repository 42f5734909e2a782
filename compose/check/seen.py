"""What can be asked of play where something never came: of all situations, of those in which the round goes on, or of
bounds that hold without any being looked at."""

from __future__ import annotations

from typing import Protocol

import numpy as np

from compose.check.condition import Bools, holds
from compose.check.study import Study
from compose.net.net import Condition, Net
from grammar.frozen import frozen


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

    def ever(self, condition: Condition) -> bool:
        """Whether a condition holds anywhere."""
        ...

    def fewest(self, place: int) -> int:
        """The smallest count of a place."""
        ...

    def still(self, place: int) -> bool:
        """Whether a place has the count everywhere that it has at the start."""
        ...


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

    def ever(self, condition: Condition) -> bool:
        return bool((holds(condition, self.study.table) & self.among).any())

    def fewest(self, place: int) -> int:
        return int(self.study.table[self.among, place].min(initial=self.net.places[place].capacity))

    def still(self, place: int) -> bool:
        return bool((self.study.table[self.among, place] == self.net.places[place].start).all())


def everywhere(study: Study) -> InSituations:
    """All that play can come to."""
    return InSituations(study, np.ones(study.space.states, dtype=np.bool_))


def in_play(study: Study) -> InSituations:
    """All in which the round goes on."""
    return InSituations(study, ~study.ended)
