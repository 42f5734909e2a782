"""What makes all attempts succeed more or less often, or take longer."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from grammar.frozen import field, frozen


class Of(Enum):
    """What a factor is on."""

    SUCCESS = "success"
    TIME = "time"


@frozen
class Factor:
    """All attempts succeed so much as often, or take so much as long."""

    of: Of
    by: Fraction
    lines: tuple[int, ...] = field(eq=False)
