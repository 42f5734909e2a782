"""How the forecasts of two games differ, in words; what may be chance is not called a difference."""

from __future__ import annotations

import math
from collections.abc import Iterator

from compose.forecast.answers import Answers
from compose.forecast.course import Figure
from grammar.frozen import frozen

SMALL_SHARE = 0.01  # shares and ratios closer than this are as good as equal
SMALL_RATIO = 0.02


@frozen
class Told:
    """One number of two forecasts: its name in words, both figures, whether it is a share."""

    name: str
    one: Figure
    other: Figure
    share: bool

    @property
    def differs(self) -> bool:
        """Whether the two differ by more than their margins, and enough to matter."""
        if not (math.isfinite(self.one.value) and math.isfinite(self.other.value)):
            return math.isfinite(self.one.value) != math.isfinite(self.other.value)
        apart = abs(self.one.value - self.other.value)
        if apart <= self.one.margin + self.other.margin:
            return False
        small = SMALL_SHARE if self.share else SMALL_RATIO * max(abs(self.one.value), abs(self.other.value))
        return apart > small

    def words(self) -> str:
        """Such as "mean length: 6.1 min, not 4.5 min"."""
        unit = " min" if self.name == "mean length" else ""
        one, other = (_number(each.value, self.share) + unit for each in (self.one, self.other))
        return f"{self.name}: {other}, not {one}"


def forecast_differences(one: Answers, other: Answers) -> Iterator[Told]:
    """Each number that both forecasts have; odds of sides that only one of the games has are left out."""
    ours, theirs = one.named(), other.named()
    for name, (figure, share) in ours.items():
        if name in theirs:
            yield Told(name, figure, theirs[name][0], share)


def _number(value: float, share: bool) -> str:
    if not math.isfinite(value):
        return "without end"
    return f"{100 * value:.0f} %" if share else f"{value:.3g}"
