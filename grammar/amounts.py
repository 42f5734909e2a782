"""Shares and times in words of English."""

from __future__ import annotations

import math

DAY_MINUTES = 24 * 60.0  # nobody plays for longer
SELDOM = 1e-5  # a share that no teacher will ever see the difference of


def percent(share: float) -> str:
    """Such as "45 %"; what may be seen now and then is not rounded to never, nor what may fail to always."""
    if SELDOM < share < 0.005:
        return "under 1 %"
    if 0.995 < share < 1 - SELDOM:
        return "over 99 %"
    return f"{100 * share:.0f} %"


def minutes(value: float) -> str:
    """Such as "4.5 min", "40 s", "12 min", "over a day", "for ever"."""
    if math.isinf(value):
        return "for ever"
    if value > DAY_MINUTES:
        return "over a day"
    if value < 1.5:
        return f"{60 * value:.0f} s"
    return f"{value:.1f} min" if value < 9.95 else f"{value:.0f} min"


def as_told(value: float) -> float:
    """The minutes that somebody reckons with who was told them: 4.4687 are told as 4.5; 0.271 as 16 s."""
    if value < 1.5:
        return round(60 * value) / 60
    return round(value, 1) if value < 9.95 else float(round(value))
