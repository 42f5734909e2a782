"""The check of a net: its public doors."""

from compose.check.check import CheckResult, Facts, check
from compose.check.explore import TooLarge, explore
from compose.check.space import Budget, StateSpace, markings

__all__ = [
    "Budget",
    "CheckResult",
    "Facts",
    "StateSpace",
    "TooLarge",
    "check",
    "explore",
    "markings",
]
