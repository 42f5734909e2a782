"""When the clock changes something while play goes on."""

from __future__ import annotations

import math

from grammar.frozen import frozen


@frozen
class Schedule:
    """The moments at which the clock changes something while play goes on.

    `place` counts how many of `times_s` (rising) have passed. After the last of them ticks come at every further
    multiple of `again_s`, and are not counted (None: no more come).
    """

    place: int
    times_s: tuple[float, ...]
    again_s: float | None = None

    def time_s(self, number: int) -> float:
        """When the tick of that number comes (the first is 0); infinite where there is none."""
        if number < len(self.times_s):
            return self.times_s[number]
        if self.again_s is None:
            return math.inf
        before = math.floor((self.times_s[-1] if self.times_s else 0.0) / self.again_s + 1e-9)
        return (before + 1 + number - len(self.times_s)) * self.again_s
